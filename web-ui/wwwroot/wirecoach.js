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
  // Whoever waits sees that something goes on.
  let waiting;
  document.addEventListener('submit', (sent) => {
    if (!sent.target.matches('[data-enhance]')) return;
    clearTimeout(waiting);
    waiting = setTimeout(() => { document.getElementById('busy').hidden = false; }, 400);
  });
  const arrived = () => { clearTimeout(waiting); document.getElementById('busy').hidden = true; };
  window.addEventListener('pageshow', arrived);
  const listen = () => window.Blazor?.addEventListener('enhancedload', () => { arrived(); settle(); });
  if (window.Blazor) listen(); else window.addEventListener('load', listen);
})();
