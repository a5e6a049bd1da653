// Beside the engine's words, which are there at once: puts a rewording in their place where the guard let one pass,
// with the exact words one touch away. Text only, never markup; without scripts, or without a model, nothing changes.
(() => {
  let off = false;
  const shown = (sentences, item, mark) => {
    for (const sentence of sentences) {
      if (sentence.textContent !== item.exact) continue;
      sentence.textContent = item.text;
      const details = document.createElement('details');
      const summary = document.createElement('summary');
      const exact = document.createElement('p');
      details.className = 'exact';
      summary.textContent = mark;
      exact.textContent = item.exact;
      details.append(summary, exact);
      sentence.after(details);
    }
  };
  const told = (lists, notice) => {
    const line = document.createElement('p');
    line.className = 'unreworded';
    line.setAttribute('role', 'status');
    line.textContent = notice;
    lists[lists.length - 1].after(line);
  };
  const reword = async () => {
    const id = /^\/sessions\/([^/]+)\/?$/.exec(location.pathname)?.[1];
    const lists = document.querySelectorAll('ul.said');
    if (off || !id || lists.length === 0) return;
    try {
      const answer = await fetch(`/api/sessions/${id}/rewordings`, { headers: { Accept: 'application/json' } });
      if (!answer.ok) return;
      const found = await answer.json();
      off = found.state === 'off';
      if (!lists[0].isConnected) return; // the page went on meanwhile
      const sentences = document.querySelectorAll('ul.said > li > p');
      for (const item of found.items) shown(sentences, item, found.mark);
      if (found.notice) told(lists, found.notice);
    } catch {
      // The exact words stand there already.
    }
  };
  const begin = () => {
    window.Blazor?.addEventListener('enhancedload', reword);
    reword();
  };
  if (document.readyState === 'complete') begin(); else window.addEventListener('load', begin);
})();
