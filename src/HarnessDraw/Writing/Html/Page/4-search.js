import { pointWords, known, at, made, colourWords, say } from './1-known.js';
import { bring } from './2-drawing.js';
import { chooseWire, chooseCavity, chooseCircuit, chooseThing, chosen } from './3-circuit.js';
// everything that has a name, and the words it can be found by
const most = 40;
const entries = [
  ...known.wires.map(w => entry('wire', w.id, `${w.colour}, ${w.size}, ${w.circuit}`, colourWords(w.colour), () => chooseWire(w.id))),
  ...known.cavities.map(c => entry('cavity', pointWords(c.id), `wire ${c.wire}, ${c.side} side`, c.id, () => chooseCavity(c.id))),
  ...known.fuses.map(f => entry('fuse', f.id, f.ratingA === null ? '' : `${f.ratingA} A`, '', () => chooseThing(f.id))),
  ...[...new Set(known.wires.map(w => w.circuit))].map(c => entry('circuit', c, '', '', () => chooseCircuit(c))),
  ...known.things.filter(t => t.kind !== 'fuse').map(t => entry(t.kind, t.id, `at ${t.place}, ${t.side} side`, t.label, () => chooseThing(t.id))),
];
let found = [];
let active = -1;

function entry(kind, name, about, more, choose) {
  return { kind, name, about, choose, words: `${kind} ${name} ${about} ${more}`.toLowerCase() };
}

export function search(text) {
  const wanted = text.toLowerCase().split(/\s+/).filter(Boolean);
  if (!wanted.length) return [];
  const whole = text.trim().toLowerCase();
  const rank = e => e.name.toLowerCase() === whole ? 0 : e.name.toLowerCase().startsWith(whole) ? 1 : e.name.toLowerCase().includes(whole) ? 2 : 3;
  return entries.filter(e => wanted.every(w => e.words.includes(w))).map((e, i) => [rank(e), i, e]).sort((a, b) => a[0] - b[0] || a[1] - b[1]).slice(0, most).map(e => e[2]);
}

function list() {
  found = search(at('find').value);
  active = found.length ? 0 : -1;
  at('found').replaceChildren(...found.map((e, i) => {
    const item = made('li');
    item.id = `found-${i}`;
    item.setAttribute('role', 'option');
    item.append(made('b', e.name), made('span', `${e.kind}${e.about ? `, ${e.about}` : ''}`));
    item.addEventListener('pointerdown', event => event.preventDefault());
    item.addEventListener('click', () => take(i));
    return item;
  }));
  open(found.length > 0);
  if (at('find').value.trim()) say(found.length ? `${found.length === most ? 'More than ' : ''}${found.length} found` : 'Nothing has that name');
  mark();
}

function open(isOpen) {
  at('found').hidden = !isOpen;
  at('find').setAttribute('aria-expanded', String(isOpen));
}

function mark() {
  [...at('found').children].forEach((item, i) => item.setAttribute('aria-selected', String(i === active)));
  const item = at('found').children[active];
  if (item) {
    at('find').setAttribute('aria-activedescendant', item.id);
    item.scrollIntoView({ block: 'nearest' });
  } else at('find').removeAttribute('aria-activedescendant');
}

function take(i) {
  const entry = found[i];
  if (!entry) return;
  open(false);
  entry.choose();
  bring(chosen.first);
}

export function startSearch() {
  at('find').addEventListener('input', list);
  at('find').addEventListener('focus', () => { if (at('find').value) list(); });
  at('find').addEventListener('blur', () => open(false));
  at('find').addEventListener('keydown', e => {
    if (e.key === 'ArrowDown' || e.key === 'ArrowUp') {
      if (at('found').hidden) list();
      else active = (active + (e.key === 'ArrowDown' ? 1 : found.length - 1)) % Math.max(1, found.length);
      mark();
      e.preventDefault();
    } else if (e.key === 'Enter') take(Math.max(0, active));
    else if (e.key === 'Escape' && !at('found').hidden) { open(false); e.stopPropagation(); }
  });
}
