// Beside the engine's words, which are there at once: puts a rewording in their place as soon as the guard let it pass,
// with the exact words one touch away. Text only, never markup; without scripts, or without a model, nothing changes.
(() => {
  let off = false;
  let running;
  const shown = (item) => {
    for (const sentence of document.querySelectorAll('ul.said > li > p')) {
      if (sentence.textContent !== item.exact) continue;
      sentence.textContent = item.text;
      const details = document.createElement('details');
      const summary = document.createElement('summary');
      const exact = document.createElement('p');
      details.className = 'exact';
      summary.textContent = item.mark;
      exact.textContent = item.exact;
      details.append(summary, exact);
      sentence.after(details);
    }
  };
  const told = (notice) => {
    const lists = document.querySelectorAll('ul.said');
    if (lists.length === 0 || document.querySelector('.unreworded')) return;
    const line = document.createElement('p');
    line.className = 'unreworded';
    line.setAttribute('role', 'status');
    line.textContent = notice;
    lists[lists.length - 1].after(line);
  };
  // The page goes, or a newer turn begins: the request ends, and with it the model's work.
  const stop = () => {
    running?.close();
    running = undefined;
  };
  const reword = () => {
    stop();
    const id = /^\/sessions\/([^/]+)\/?$/.exec(location.pathname)?.[1];
    if (off || !id || !document.querySelector('ul.said')) return;
    const source = new EventSource(`/api/sessions/${id}/rewordings/stream`);
    running = source;
    source.addEventListener('reworded', (told) => { if (running === source) shown(JSON.parse(told.data)); });
    source.addEventListener('end', (ended) => {
      source.close();
      if (running !== source) return;
      const { state, notice } = JSON.parse(ended.data);
      off = state === 'off';
      if (notice) told(notice);
    });
    source.onerror = stop; // never again by itself: the exact words stand there already
  };
  const begin = () => {
    window.Blazor?.addEventListener('enhancedload', reword);
    document.addEventListener('submit', stop);
    window.addEventListener('pagehide', stop);
    reword();
  };
  if (document.readyState === 'complete') begin(); else window.addEventListener('load', begin);
})();
