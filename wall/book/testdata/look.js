// Looks at every page in a frame for what a person would complain of, and
// writes one line for each fault. Coordinates in drawings are in units of ink.
function look(frame, name) {
  const doc = frame.contentDocument, wide = frame.contentWindow.innerWidth, faults = [];
  const fault = (what, e, more) => faults.push(name + ': ' + what + ': ' + said(e) + (more ? ' / ' + more : ''));
  const said = e => (e.getAttribute('class') || e.tagName) + ' "' + e.textContent.trim().replace(/\s+/g, ' ').slice(0, 40) + '"';
  const over = (a, b, d) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > d && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > d;

  if (doc.scripts.length) faults.push(name + ': a script stands in the page');
  if (doc.documentElement.scrollWidth > wide + 1) faults.push(name + ': the page is ' + doc.documentElement.scrollWidth + ' wide, its window ' + wide + ': ' + [...doc.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > wide + 1).slice(-1).map(said));

  // Nothing slides but a drawing that has no room on a phone.
  const slides = e => e.matches('.whole>.alone') && / on a phone$/.test(name) && e.querySelector('svg').viewBox.baseVal.width > wide;
  for (const e of doc.querySelectorAll('body *')) if (e.clientWidth && e.scrollWidth > e.clientWidth + 1 && /auto|scroll/.test(getComputedStyle(e).overflowX) && !slides(e)) fault('slides sideways', e);

  // Text and boxes of the page: nothing past its sides, nothing over another.
  const leaves = [...doc.querySelectorAll('p,th,td,caption,li,h1,h2,h3,h4,figcaption,legend,label,input')]
    .filter(e => !e.querySelector('p,table,ul,ol,li,label,input,h2,h3') && !e.closest('svg') && e.getClientRects().length);
  for (const e of leaves) {
    const r = e.getBoundingClientRect();
    if (r.right > wide + 1 || r.left < -1) fault('past the side of the page', e);
    if (e.tagName != 'INPUT' && e.scrollWidth > e.clientWidth + 1 && e.clientWidth) fault('too wide for its box', e);
  }
  if (/ on (A4|Letter)$/.test(name)) {
    const words = doc.createTreeWalker(doc.body, NodeFilter.SHOW_TEXT);
    for (let n; (n = words.nextNode());) {
      const e = n.parentElement, high = parseFloat(getComputedStyle(e).fontSize) * 0.716 / 96 * 25.4;
      if (n.data.trim() && !e.closest('svg') && e.getClientRects().length && high < 2.5) fault('capitals are ' + high.toFixed(2) + ' mm high, less than 2.5 mm', e);
    }
  }
  const placed = leaves.map(e => ({e, r: e.getBoundingClientRect()})).sort((a, b) => a.r.top - b.r.top);
  placed.forEach((a, i) => {
    for (let j = i + 1; j < placed.length && placed[j].r.top < a.r.bottom; j++) {
      const b = placed[j];
      if (over(a.r, b.r, 1.5) && !a.e.contains(b.e) && !b.e.contains(a.e)) fault('overlap', a.e, said(b.e));
    }
  });

  let texts = 0;
  for (const svg of doc.querySelectorAll('svg.drawing[role=img]')) {
    const all = [...svg.querySelectorAll('text')], edge = svg.getBoundingClientRect();
    if (!edge.width) continue; // the one of two sizes that is not shown
    const scale = edge.width / svg.viewBox.baseVal.width;
    const small = Math.min(...all.map(e => parseFloat(getComputedStyle(e).fontSize) * scale));
    if (/ on a phone$/.test(name) && small < 8) fault('text of ' + small.toFixed(1) + ' pixels', svg, svg.querySelector('title').textContent);
    if (edge.right > wide + 1 && !slides(svg.parentElement)) fault('drawing past the side of the page', svg);
    texts += all.length;
    // Ink of a line of type: without the room above capitals and below the base line.
    const inkOf = e => {
      const r = e.getBoundingClientRect(), flat = !/rotate\(-90\)/.test(e.getAttribute('transform'));
      const d = 0.14 * (flat ? r.height : r.width);
      return flat ? {left: r.left, right: r.right, top: r.top + d, bottom: r.bottom - d} : {left: r.left + d, right: r.right - d, top: r.top, bottom: r.bottom};
    };
    const rects = all.map(inkOf);
    const opaque = [...svg.querySelectorAll('.tag,.cutnumber,.flaw,.weak,.paper,.drill')];
    const after = (a, b) => a.compareDocumentPosition(b) & 4;
    // On a full-size page what lies past its edge belongs to the next page.
    const clipped = i => all[i].closest('[clip-path]') && !over(rects[i], edge, 0);
    all.forEach((e, i) => {
      if (clipped(i)) return;
      // The capitals of the faces that are asked for are 0.716 of their size high (Arial, its OS/2 table).
      const high = parseFloat(getComputedStyle(e).fontSize) * scale * 0.716 / 96 * 25.4;
      if (/ on (A4|Letter)$/.test(name) && high < 2.5) fault('capitals are ' + high.toFixed(2) + ' mm high, less than 2.5 mm', e, svg.querySelector('title').textContent);
      const r = rects[i], d = 1.5 * scale;
      if (!all[i].closest('[clip-path]') && (r.left < edge.left - d || r.right > edge.right + d || r.top < edge.top - d || r.bottom > edge.bottom + d)) fault('text past its drawing', e, svg.querySelector('title').textContent);
      for (let j = i + 1; j < all.length; j++) if (over(r, rects[j], 1.2 * scale)) fault('text over text', e, said(all[j]) + ' in ' + svg.querySelector('title').textContent);
    });
    for (const line of svg.querySelectorAll('path.pole,path.lead,path.seam,path.start,path.edge,path.datum,path.ext,path.cut,path.flawlead,path.tag,rect.frame')) {
      const box = line.getBoundingClientRect(), grown = {left: box.left - 1, right: box.right + 1, top: box.top - 1, bottom: box.bottom + 1};
      const near = all.map((e, i) => i).filter(i => over(rects[i], grown, 0) && !clipped(i) && !/\bhalo\b/.test(all[i].getAttribute('class')));
      if (!near.length) continue;
      const m = line.getScreenCTM(), long = line.getTotalLength(), n = Math.min(600, Math.ceil(long));
      const points = [];
      const shape = line.closest('g[clip-path]'), clip = shape && doc.getElementById(shape.getAttribute('clip-path').slice(5, -1)).firstElementChild.getBBox();
      for (let k = 0; k <= n; k++) { // of what is not clipped
        const p = line.getPointAtLength(long * k / n);
        if (!clip || p.x >= clip.x && p.x <= clip.x + clip.width && p.y >= clip.y && p.y <= clip.y + clip.height) points.push(p.matrixTransform(m));
      }
      for (const i of near) {
        const r = rects[i], d = 1.2 * scale;
        if (!points.some(p => p.x > r.left + d && p.x < r.right - d && p.y > r.top + d && p.y < r.bottom - d)) continue;
        const covered = opaque.some(o => after(line, o) && after(o, all[i]) && over(o.getBoundingClientRect(), r, 0) &&
          o.getBoundingClientRect().left <= r.left + 2 && o.getBoundingClientRect().right >= r.right - 2);
        if (!covered) fault('line through text', all[i], line.getAttribute('class') + ' in ' + svg.querySelector('title').textContent);
      }
    }
    for (const mark of svg.querySelectorAll('.nail')) { // hidden by text with a halo too
      const m = mark.getBoundingClientRect();
      all.forEach((e, i) => { if (over(m, rects[i], 0)) fault('text over a mark', e, svg.querySelector('title').textContent); });
    }
  }
  for (const svg of doc.querySelectorAll('svg[role=img]')) {
    const ids = (svg.getAttribute('aria-labelledby') || '').split(' ');
    if (!ids.length || ids.some(id => !doc.getElementById(id) || !svg.contains(doc.getElementById(id)))) fault('no text alternative', svg);
  }
  const seen = new Set();
  for (const e of doc.querySelectorAll('[id]')) { if (seen.has(e.id)) fault('id stands twice: ' + e.id, e); seen.add(e.id); }
  for (const e of doc.querySelectorAll('th')) if (!e.getAttribute('scope')) fault('heading of a table without scope', e);
  let level = 0;
  for (const e of doc.querySelectorAll('h1,h2,h3,h4')) { const l = +e.tagName[1]; if (l > level + 1) fault('heading skips a level', e); level = l; }
  return {texts, faults};
}
// One page at a time is in the document, written at once: nothing of it has to be loaded, and what
// is laid out and kept stays small.
onload = () => {
  const out = [];
  let texts = 0;
  for (const page of pages) {
    const frame = document.createElement('iframe');
    frame.style = 'width:' + page.wide + 'px;height:900px;border:0;display:block';
    document.body.append(frame);
    frame.contentDocument.open();
    frame.contentDocument.write(page.body);
    frame.contentDocument.close();
    const found = look(frame, page.name);
    texts += found.texts;
    out.push(...found.faults);
    frame.remove();
  }
  document.querySelector('script').remove();
  document.getElementById('findings').textContent = JSON.stringify({texts, faults: out});
};
