import { known, at, made, say, chosenState } from './1-known.js';
import { chosen, chooseWire, expectedV, isChosenBuild, onStep } from './3-circuit.js';
import { explains, faultCount, faultLoads, faultPoint, loadWords, meterV, rankFaults, shouldWork } from './4-suspects.js';
// readings and loads that were noted, and which faults they put under suspicion
const dropV = 0.3;
const readings = new Map();
const seenLoads = new Map();
const leastShare = 0.01;
const mostSuspects = 10;

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
  if (Math.abs(off) <= meterV(reading.expected) + dropV) return 'good';
  return off < 0 ? 'low' : 'high';
}

// what a load does in the chosen state
function noteLoad() {
  const load = at('load').value;
  const seen = Number(at('does').value);
  const should = shouldWork(load, chosenState.index);
  if (should !== (seen < 3)) {
    say(`${load} should be ${should ? 'on' : 'off'} in state ${known.states[chosenState.index].id}: '${loadWords[seen]}' says nothing there`);
    return;
  }
  seenLoads.set(`${chosenState.index} ${load}`, { load, state: chosenState.index, seen });
  showReadings();
}

function percent(share) {
  return share > 0.99 ? 'over 99 %' : `${Math.round(share * 100)} %`;
}

function suspectItem({ fault, share }) {
  const item = made('li');
  const words = `${fault.words}, ${fault.where}: ${percent(share)}`;
  if (!fault.wire) {
    item.textContent = words;
    return item;
  }
  const button = made('button', words);
  button.type = 'button';
  button.addEventListener('click', () => chooseWire(fault.wire));
  item.append(button);
  return item;
}

export function showReadings() {
  const noted = [...readings.values()];
  const loads = [...seenLoads.values()];
  const words = { good: 'as it should be', low: 'too low', high: 'too high' };
  at('readings').replaceChildren(
    ...loads.map(a => made('li', `${a.load}, ${known.states[a.state].id}: ${loadWords[a.seen]}`)),
    ...noted.map(r => made('li', `${r.name}, ${known.states[r.state]?.id ?? ''}: ${r.volts.toFixed(2)} V, ${r.expected === null ? 'nothing foretold' : `expected ${r.expected.toFixed(2)} V, ${words[judge(r)]}`}${faultPoint(r.node) === null ? ', not among the points of the fault table' : ''}`)));
  at('forget').hidden = noted.length + loads.length === 0;
  at('suspects').replaceChildren();
  if (noted.length + loads.length === 0) {
    at('verdict').textContent = 'Nothing is noted yet.';
    return;
  }
  const wrong = loads.some(a => a.seen !== 0 && a.seen !== 4) || noted.some(r => judge(r) === 'low' || judge(r) === 'high');
  if (!wrong) {
    at('verdict').textContent = 'Nothing that was noted is out of order.';
    say(at('verdict').textContent);
    return;
  }
  const ranked = rankFaults(noted, loads);
  const likely = ranked.filter(r => r.share >= leastShare).slice(0, mostSuspects);
  const clear = likely.some(r => explains(r.fault, noted, loads));
  at('verdict').textContent = `${likely.length} of ${faultCount} single faults are likely.${clear ? '' : ' None of them explains everything that was noted: look and measure again, or there are two faults.'}${isChosenBuild() ? '' : ' The faults are those of the build with which the page opens.'}`;
  at('suspects').replaceChildren(...likely.map(suspectItem));
  say(`${at('verdict').textContent} First: ${likely[0].fault.words}.`);
}

export function startReadings() {
  at('load').append(...faultLoads.map(l => { const o = made('option', l); o.value = l; return o; }));
  at('does').append(...[2, 1, 3, 0].map(c => { const o = made('option', loadWords[c]); o.value = c; return o; }));
  at('noteload').addEventListener('submit', e => { e.preventDefault(); noteLoad(); });
  at('note').addEventListener('submit', e => {
    e.preventDefault();
    note(at('reading').value);
    at('reading').value = '';
  });
  at('forget').addEventListener('click', () => { readings.clear(); seenLoads.clear(); showReadings(); });
  onStep(showReadings);
}
