// what the page knows: unpacked and read once, found again by name
export const known = JSON.parse(await unpacked(document.getElementById('known').textContent));
export const at = id => document.getElementById(id);
export const wires = new Map(known.wires.map(w => [w.id, w]));
export const fuses = new Map(known.fuses.map(f => [f.id, f]));
export const things = new Map(known.things.map(t => [t.id, t]));
export const colours = new Map(known.colours.map(c => [c.code, c]));
export const points = new Map(known.points.map(p => [p.node, p]));
for (const way of known.ways) way.stops = way.stops.map(node => points.get(node));
export const cavityWires = collect(known.cavities, c => c.id, c => c.wire);
export const circuitWires = collect(known.wires, w => w.circuit, w => w.id);
export const circuitWays = collect(known.ways, w => w.circuit, w => w);
export const build = new Map(known.options.map(o => [o.id, o.chosen]));
export const chosenState = { index: Math.max(0, known.states.findIndex(s => s.key === 'run' && s.engine === 'running')) };

// nothing is fetched: the bytes are those of the page itself
function unpacked(base64) {
  const bytes = Uint8Array.from(atob(base64), c => c.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))).text();
}

export function collect(items, key, value) {
  const found = new Map();
  for (const item of items) {
    const k = key(item);
    if (!found.has(k)) found.set(k, []);
    found.get(k).push(value(item));
  }
  return found;
}

// an element with text: the one way in which words of the harness come onto the page
export function made(tag, text, className) {
  const element = document.createElement(tag);
  if (text !== undefined) element.textContent = text;
  if (className) element.className = className;
  return element;
}

export function isBuilt(wire) {
  return Object.entries(wire.builds).every(([option, choices]) => choices.includes(build.get(option)));
}

export function colourWords(colour) {
  return colour.split('/').map(c => colours.get(c)?.word ?? c).join(', tracer ');
}

export function voltsAt(node) {
  return points.get(node)?.volts[chosenState.index] ?? null;
}

// 'firewall B10' out of 'firewall.B10' or 'firewall:B10', as every sheet names it
export function pointWords(node) {
  const [, name, pin] = /^(.+)[.:](.+)$/.exec(node) ?? [];
  return name === undefined ? node : `${name}${/\d$/.test(name) && /^\d/.test(pin) ? ' – ' : ' '}${pin}`;
}

export function say(words) {
  at('said').textContent = words;
}
