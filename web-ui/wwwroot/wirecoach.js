// Focus follows the question after an enhanced post; everything works without this.
(() => {
  const settle = () => {
    const wrong = document.querySelector('#wrong, .wrong-line');
    const target = wrong ?? document.getElementById('asked') ?? document.getElementById('main');
    if (!target) return;
    if (!target.hasAttribute('tabindex')) target.setAttribute('tabindex', '-1');
    target.focus({ preventScroll: true });
    if (!wrong) { window.scrollTo(0, 0); document.querySelector('.talk')?.scrollTo(0, 0); }
  };
  const listen = () => window.Blazor?.addEventListener('enhancedload', settle);
  if (window.Blazor) listen(); else window.addEventListener('load', listen);
})();
