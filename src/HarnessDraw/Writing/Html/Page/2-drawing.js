import { known, at, wires, colours, made, isBuilt } from './1-known.js';
// the drawings: which one is shown, how large, and what is lit on them
const svgSpace = 'http://www.w3.org/2000/svg';
export const drawings = [...document.querySelectorAll('.drawing')].map(section => ({ section, svg: section.querySelector('svg'), byWire: new Map(), byThing: new Map() }));
let shown = 0;
let zoom = 1;
let coresMade = false;

// for each wire its lane with outline and tracer, and every text and mark that speaks of it: made once
for (const drawing of drawings) {
  drawing.svg.setAttribute('role', 'img');
  drawing.svg.setAttribute('aria-label', drawing.section.dataset.heading);
  drawing.svg.querySelector(':scope > title')?.remove();
  for (const link of drawing.svg.querySelectorAll('a')) link.remove();
  for (const lane of drawing.svg.querySelectorAll('[data-wire]')) {
    lane.classList.add('lane');
    const dress = [];
    const before = lane.previousElementSibling;
    if (before && !before.hasAttribute('data-wire') && before.getAttribute('d') === lane.getAttribute('d')) dress.push(before);
    for (let next = lane.nextElementSibling; next && isDress(next); next = next.nextElementSibling) dress.push(next);
    for (const part of dress) part.classList.add('lanedress');
    put(drawing.byWire, lane.dataset.wire, ...(dress[0] === before ? [before, lane, ...dress.slice(1)] : [lane, ...dress]));
  }
  for (const mark of drawing.svg.querySelectorAll('[data-for]')) put(drawing.byWire, mark.dataset.for, ...swatchBefore(mark), mark);
  for (const mark of drawing.svg.querySelectorAll('[data-load]')) put(drawing.byThing, mark.dataset.load, mark);
  for (const mark of drawing.svg.querySelectorAll('[data-fuse]')) put(drawing.byThing, mark.dataset.fuse, mark);
}

function isDress(element) {
  return element.tagName === 'path' && element.hasAttribute('fill') && ![...element.attributes].some(a => a.name.startsWith('data-') || a.name.startsWith('stroke'));
}

// between a wire's id and its colour letters in a row lies the swatch, which carries no name of its own
function swatchBefore(mark) {
  const between = [];
  for (let e = mark.previousElementSibling; e && between.length < 8; e = e.previousElementSibling) {
    if (e.dataset.for === mark.dataset.for) return between.reverse();
    if (e.tagName !== 'path' && e.tagName !== 'g' || [...e.attributes].some(a => a.name.startsWith('data-'))) return [];
    between.push(e);
  }
  return [];
}

function put(map, key, ...values) {
  if (!map.has(key)) map.set(key, []);
  map.get(key).push(...values);
}

// copies of what is lit lie above the drawing, which steps back as a whole: the cost goes with the circuit, not with the harness
export function light(wireIds, thingIds) {
  for (const drawing of drawings) {
    drawing.svg.querySelector(':scope > .light')?.remove();
    if (!wireIds) {
      drawing.svg.classList.remove('lit');
      continue;
    }
    const layer = document.createElementNS(svgSpace, 'g');
    layer.setAttribute('class', 'light');
    const groups = new Map();
    const parts = [...thingIds.flatMap(id => drawing.byThing.get(id) ?? []), ...wireIds.flatMap(id => drawing.byWire.get(id) ?? [])];
    for (const part of parts) {
      if (!groups.has(part.parentNode)) groups.set(part.parentNode, layer.appendChild(placedLike(part.parentNode, drawing.svg)));
      const copy = part.cloneNode(true);
      copy.removeAttribute('id');
      groups.get(part.parentNode).appendChild(copy);
    }
    drawing.svg.classList.add('lit');
    drawing.svg.appendChild(layer);
  }
}

function placedLike(group, svg) {
  const copy = document.createElementNS(svgSpace, 'g');
  const moves = [];
  for (let g = group; g && g !== svg; g = g.parentNode) if (g.getAttribute('transform')) moves.unshift(g.getAttribute('transform'));
  if (moves.length) copy.setAttribute('transform', moves.join(' '));
  return copy;
}

export function showBuild() {
  for (const drawing of drawings) {
    for (const [id, parts] of drawing.byWire) {
      const absent = wires.has(id) && !isBuilt(wires.get(id));
      for (const part of parts) part.classList.toggle('absent', absent);
    }
  }
}

// black ink: a lane is black with a white core that carries the dashes of its base colour, and bars of its tracer: one for a dark tracer, two thin ones for a light one
const blackPitch = 7;
export function setBlack(on) {
  if (on && !coresMade) {
    coresMade = true;
    for (const drawing of drawings) for (const [id, parts] of drawing.byWire) for (const lane of parts.filter(p => p.hasAttribute('data-wire'))) addCore(lane, wires.get(id), parts);
  }
  document.body.classList.toggle('black', on);
}

function addCore(lane, wire, parts) {
  const [base, tracer] = (wire?.colour ?? '').split('/').map(c => colours.get(c) ?? colours.get(c.slice(1)));
  if (!base) return;
  const layers = base.code === 'BK' ? [] : [['#FFFFFF', '', 0], ...(base.dash ? [['#000000', base.dash, 0]] : [])];
  if (tracer) {
    layers.push(['#FFFFFF', `2.3 ${blackPitch - 2.3}`, 1.15]);
    layers.push(tracer.dark ? ['#000000', `1 ${blackPitch - 1}`, 0.5] : ['#000000', `0.28 1.32 0.28 ${blackPitch - 1.88}`, 0.94]);
  }
  const width = Number(lane.getAttribute('stroke-width')) * 0.6;
  for (const [stroke, dash, half] of layers.reverse()) {
    const core = document.createElementNS(svgSpace, 'path');
    core.setAttribute('class', 'core');
    core.setAttribute('d', lane.getAttribute('d'));
    core.setAttribute('stroke', stroke);
    core.setAttribute('stroke-width', width.toFixed(2));
    if (dash) core.setAttribute('stroke-dasharray', dash);
    if (half) core.setAttribute('stroke-dashoffset', (half - blackPitch / 2).toFixed(2));
    lane.after(core);
    parts.splice(parts.indexOf(lane) + 1, 0, core);
  }
}

export function show(index) {
  shown = index;
  drawings.forEach((d, i) => d.section.classList.toggle('shown', i === index));
  at('drawing').value = index;
}

export function setZoom(factor, clientX, clientY) {
  const stage = at('stage');
  const box = stage.getBoundingClientRect();
  const x = (clientX ?? box.left + box.width / 2) - box.left;
  const y = (clientY ?? box.top + box.height / 2) - box.top;
  const next = Math.min(24, Math.max(1, factor));
  const ratio = next / zoom;
  const [left, top] = [(stage.scrollLeft + x) * ratio - x, (stage.scrollTop + y) * ratio - y];
  zoom = next;
  for (const drawing of drawings) drawing.section.style.width = `${zoom * 100}%`;
  stage.scrollTo(left, top);
}

export const zoomNow = () => zoom;

// brings a wire or thing into sight on the drawing that is shown, or on the first that has it
export function bring(wireId, thingId) {
  const has = d => (thingId && d.byThing.get(thingId)?.[0]) || d.byWire.get(wireId)?.[0];
  const drawing = has(drawings[shown]) ? drawings[shown] : drawings.find(has);
  if (!drawing) return;
  show(drawings.indexOf(drawing));
  const mark = thingId && drawing.byThing.get(thingId)?.[0] || drawing.byWire.get(wireId).find(p => p.tagName === 'text') || has(drawing);
  const stage = at('stage').getBoundingClientRect();
  const box = mark.getBoundingClientRect();
  at('stage').scrollBy(box.left + box.width / 2 - stage.left - stage.width / 2, box.top + box.height / 2 - stage.top - stage.height / 2);
}

// what lies under a finger: the point itself first, then a ring of 8 and one of 16 pixels round it
export function under(x, y) {
  for (const reach of [0, 8, 16]) {
    for (let turn = 0; turn < (reach ? 8 : 1); turn++) {
      const target = document.elementFromPoint(x + reach * Math.cos(turn * Math.PI / 4), y + reach * Math.sin(turn * Math.PI / 4));
      const found = target?.closest('[data-wire], [data-cavity], [data-for], [data-load], [data-fuse]');
      if (found && at('stage').contains(found)) return found.dataset;
    }
  }
  return null;
}

export function startDrawings() {
  document.querySelectorAll('.drawing text[textLength]').forEach(t => t.setAttribute('lengthAdjust', 'spacingAndGlyphs'));
  drawings.forEach((d, i) => {
    const option = made('option', d.section.dataset.name.replace('chart', 'Wall chart').replace('faces', 'Connectors, both views,'));
    option.value = i;
    at('drawing').appendChild(option);
  });
  at('drawing').addEventListener('change', () => show(Number(at('drawing').value)));
  if (drawings.length) show(0);
  at('smaller').addEventListener('click', () => setZoom(zoom / 1.5));
  at('larger').addEventListener('click', () => setZoom(zoom * 1.5));
  at('whole').addEventListener('click', () => setZoom(1));
  const stage = at('stage');
  stage.addEventListener('wheel', e => { if (e.ctrlKey) { e.preventDefault(); setZoom(zoom * Math.exp(-e.deltaY / 300), e.clientX, e.clientY); } }, { passive: false });
  stage.addEventListener('keydown', e => {
    if (e.key === '+' || e.key === '=') setZoom(zoom * 1.5);
    else if (e.key === '-') setZoom(zoom / 1.5);
  });
  startPinch(stage);
}

function startPinch(stage) {
  let start = null;
  const apart = t => Math.hypot(t[0].clientX - t[1].clientX, t[0].clientY - t[1].clientY);
  stage.addEventListener('touchstart', e => { if (e.touches.length === 2) start = { apart: apart(e.touches), zoom }; }, { passive: true });
  stage.addEventListener('touchmove', e => {
    if (!start || e.touches.length !== 2) return;
    e.preventDefault();
    setZoom(start.zoom * apart(e.touches) / start.apart, (e.touches[0].clientX + e.touches[1].clientX) / 2, (e.touches[0].clientY + e.touches[1].clientY) / 2);
  }, { passive: false });
  stage.addEventListener('touchend', () => { start = null; });
  let drag = null;
  stage.addEventListener('pointerdown', e => { if (e.pointerType === 'mouse' && e.button === 0) drag = { x: e.clientX, y: e.clientY }; });
  window.addEventListener('pointermove', e => { if (drag) { stage.scrollBy(drag.x - e.clientX, drag.y - e.clientY); drag = { x: e.clientX, y: e.clientY }; } });
  window.addEventListener('pointerup', () => { drag = null; });
}
