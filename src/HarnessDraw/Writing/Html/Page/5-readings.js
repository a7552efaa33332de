import { known, at, made, say, chosenState } from './1-known.js';
import { chosen, expectedV, goTo, hopWords, onStep } from './3-circuit.js';
// readings that were noted, and which stretch of the way they put under suspicion
const meterShare = 0.01;
const meterV = 0.02;
const dropV = 0.3;
const readings = new Map();

export function parseVolts(text) {
  const volts = Number(text.trim().replace(/\s*v$/i, '').replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(volts) || Math.abs(volts) > 100 ? null : volts;
}

const key = node => `${chosenState.index} ${node}`;

function note(text) {
  const volts = parseVolts(text);
  const way = chosen.ways[chosen.way];
  if (volts === null || !way) {
    say(`'${text}' is no reading: volts are wanted, for example 12.4`);
    return;
  }
  const stop = way.stops[chosen.stop];
  readings.set(key(stop.node), { node: stop.node, name: stop.name, state: chosenState.index, volts, expected: expectedV(way, chosen.stop) });
  showReadings();
}

// how far a reading is from what it should be: 'good', 'low', 'high', or nothing when nothing can be foretold
export function judge(reading) {
  if (!reading || reading.expected === null) return null;
  const off = reading.volts - reading.expected;
  if (Math.abs(off) <= Math.abs(reading.expected) * meterShare + meterV + dropV) return 'good';
  return off < 0 ? 'low' : 'high';
}

// along the way of the current: the trouble lies behind the last good point and before the first bad one
export function suspectHops(way, readingAt) {
  const load = way.hops.findIndex(h => h.kind === 'load');
  const last = load < 0 ? way.stops.length - 1 : load;
  let from = 0;
  let to = null;
  for (let i = 0; i <= last; i++) {
    const said = judge(readingAt(way.stops[i].node));
    if (said === 'good' && to === null) from = i;
    if (said === 'low' && to === null) to = i;
  }
  if (to !== null) return { side: 'feed', from, to };
  if (load < 0) return null;
  from = load + 1;
  for (let i = load + 1; i < way.stops.length; i++) {
    const said = judge(readingAt(way.stops[i].node));
    if (said === 'high') from = i;
    if (said === 'good') { to = i; break; }
  }
  return judge(readingAt(way.stops[from].node)) === 'high' ? { side: 'return', from, to: to ?? way.stops.length - 1 } : null;
}

// readings on this way that put no stretch of it under suspicion: said for what they are
function unplaced(way) {
  const here = way.stops.map(s => readings.get(key(s.node))).filter(Boolean);
  const odd = here.find(r => judge(r) === 'high' || judge(r) === 'low');
  if (!here.length) return 'No reading is noted on this way in this state.';
  if (odd && judge(odd) === 'high') return `${odd.name} reads too high: something feeds it that should not, or key and switches are not as chosen.`;
  if (odd) return `${odd.name} reads too low on the return: check key and switches, and where the meter's black lead is.`;
  if (here.every(r => r.expected === null)) return 'Nothing can be foretold at the points that were measured.';
  return 'No reading on this way and in this state is out of order.';
}

export function showReadings() {
  const noted = [...readings.values()];
  const words = { good: 'as it should be', low: 'too low', high: 'too high' };
  at('readings').replaceChildren(...noted.map(r => made('li', `${r.name}, ${known.states[r.state]?.id ?? ''}: ${r.volts.toFixed(2)} V, ${r.expected === null ? 'nothing foretold' : `expected ${r.expected.toFixed(2)} V, ${words[judge(r)]}`}`)));
  at('forget').hidden = noted.length === 0;
  at('suspects').replaceChildren();
  const way = chosen.ways[chosen.way];
  if (!noted.length || !way) {
    at('verdict').textContent = noted.length ? 'Choose a circuit to see what the readings say of it.' : 'No reading is noted yet.';
    return;
  }
  const found = suspectHops(way, node => readings.get(key(node)));
  if (!found) {
    at('verdict').textContent = unplaced(way);
    say(at('verdict').textContent);
    return;
  }
  const hops = way.hops.slice(found.from, found.to);
  at('verdict').textContent = found.from === found.to
    ? `Too low at the very beginning: look at the source before ${way.stops[found.from].name}.`
    : `The trouble lies between ${way.stops[found.from].name} and ${way.stops[found.to].name}, on the ${found.side}. ${hops.length > 1 ? `Measure next about the middle: ${way.stops[Math.floor((found.from + found.to) / 2)].name}.` : ''}`;
  at('suspects').replaceChildren(...hops.map(h => made('li', hopWords(h))));
  say(at('verdict').textContent);
}

export function startReadings() {
  at('note').addEventListener('submit', e => {
    e.preventDefault();
    note(at('reading').value);
    at('reading').value = '';
  });
  at('forget').addEventListener('click', () => { readings.clear(); showReadings(); });
  onStep(showReadings);
}
