import { pointWords, known, at, made, say, chosenState, fuses, cavityWires } from './1-known.js';
import { chosen, chooseWire, chooseCavity, chooseThing, expectedV, isChosenBuild, showStop } from './3-circuit.js';
import { explains, faultCount, faultLoad, faultPoint, loads, loadWords, measured, meterV, noteIn, places, rankFaults, rules, scoreFaults, shouldWork, soundV, suspectGroups, testedStates } from './4-suspects.js';
import { nextTest } from './4-tests.js';
// readings, loads and fuses that were noted, which faults they put under suspicion, and what to test next
const dropV = 0.3;
const noted = { readings: new Map(), loads: new Map(), tries: new Map(), skipped: [] };
const leastShare = 0.01;
const mostSuspects = 10;
const mostOutcomes = 5;
let test = null;

export function parseVolts(text) {
  const volts = Number(text.trim().replace(/\s*v$/i, '').replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(volts) || Math.abs(volts) > 100 ? null : volts;
}

function noteVolts(text, reading) {
  const volts = parseVolts(text);
  if (volts === null) {
    say(`'${text}' is no reading: volts are wanted, for example 12.4`);
    return;
  }
  noted.readings.set(`${reading.state} ${reading.toLive} ${reading.point ?? reading.name}`, { ...reading, volts });
  showReadings();
}

function note(text) {
  const stop = chosen.ways[chosen.way]?.stops[chosen.stop];
  if (stop) noteVolts(text, { name: stop.name, point: faultPoint(stop.node), state: chosenState.index, toLive: false, expected: expectedV(chosen.ways[chosen.way], chosen.stop) });
}

// how far a reading is from what it should be: 'good', 'low', 'high', or nothing when nothing can be foretold
export function judge(reading) {
  if (!reading || reading.expected === null) return null;
  const off = reading.volts - reading.expected;
  if (Math.abs(off) <= meterV(reading.expected) + dropV) return 'good';
  return off < 0 ? 'low' : 'high';
}

function noteSeen(load, state, seen) {
  const should = shouldWork(load, state);
  if (should !== (seen < 3)) {
    say(`${loads[load]} should be ${should ? 'on' : 'off'} in state ${known.states[state].id}: '${loadWords[seen]}' says nothing there`);
    return;
  }
  noted.loads.set(`${state} ${load}`, { load, state, seen });
  showReadings();
}

function percent(share) {
  return share >= 0.995 ? 'over 99 %' : share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;
}

function pressButton(words, press) {
  const button = made('button', words);
  button.type = 'button';
  button.addEventListener('click', press);
  return button;
}

function suspectItem({ fault }) {
  const words = `${fault.words}, ${fault.where}`;
  const item = made('li', fault.wire ? undefined : words);
  if (fault.wire) item.append(pressButton(words, () => chooseWire(fault.wire)));
  return item;
}

// what nothing tells apart stands together
function groupItem({ suspects, share }) {
  const item = made('li', percent(share));
  if (suspects.length > 1) item.append(`, ${suspects.length} that cannot be told apart without unplugging or opening the wrap`);
  const members = made('ul');
  members.append(...suspects.slice(0, mostSuspects).map(suspectItem));
  item.append(members);
  return item;
}

function noteItems() {
  const words = { good: 'as it should be', low: 'too low', high: 'too high' };
  return [
    ...[...noted.loads.values()].map(a => `${loads[a.load]}, ${known.states[a.state].id}: ${loadWords[a.seen]}`),
    ...[...noted.readings.values()].map(r => `${r.name}${r.toLive ? ' from the live post' : ''}, ${known.states[r.state]?.id ?? ''}: ${r.volts.toFixed(2)} V, ${r.expected === null ? 'nothing foretold' : `expected ${r.expected.toFixed(2)} V, ${words[judge(r)]}`}${r.point === null ? ', not among the points of the fault table' : ''}`),
    ...[...noted.tries.values()].map(t => `new fuse ${known.fuses[t.fuse].id}: ${t.holds ? 'holds' : 'opens again'}`),
    ...noted.skipped.map(r => `${pointWords(measured[r.point])}, ${known.states[r.state].id}: cannot be reached`),
  ].map(text => made('li', text));
}

export function showReadings() {
  const all = { answers: [...noted.loads.values()], readings: [...noted.readings.values()].filter(r => r.point !== null), tries: [...noted.tries.values()], skipped: noted.skipped };
  const items = noteItems();
  at('readings').replaceChildren(...items);
  at('forget').hidden = items.length === 0;
  at('suspects').replaceChildren();
  const wrong = all.answers.some(a => a.seen !== 0 && a.seen !== 4) || [...noted.readings.values()].some(r => judge(r) === 'low' || judge(r) === 'high') || all.tries.some(t => !t.holds);
  if (!wrong) {
    at('verdict').textContent = items.length ? 'Nothing that was noted is out of order.' : 'Nothing is noted yet.';
    if (items.length) say(at('verdict').textContent);
    showTest(null, 'Say what a load does, or note a reading: the next test follows from it.');
    return;
  }
  const states = testedStates(all);
  const evidence = noteIn(all, states);
  const scored = scoreFaults(evidence);
  const ranked = rankFaults(scored);
  const groups = suspectGroups(ranked, states);
  const likely = groups.filter((g, i) => i === 0 || g.share >= leastShare).slice(0, mostSuspects);
  const clear = likely.some(g => explains(g.suspects[0].fault, evidence));
  const count = likely.reduce((sum, g) => sum + g.suspects.length, 0);
  at('verdict').textContent = `${count} of ${faultCount} single faults are likely.${clear ? '' : ' None of them explains everything that was noted: look and measure again, or there are two faults.'}${isChosenBuild() ? '' : ' The faults are those of the build with which the page opens.'}`;
  at('suspects').replaceChildren(...likely.map(groupItem));
  if (groups[0].share >= rules.sure) showTest(null, 'No further test is needed: look there, mend it, measure the same point again with the load on.');
  else showTest(nextTest(rankFaults(scored, rules.hedge), ranked, evidence, states), 'No reading from outside tells more: unplug, look, and measure ohms at what is named first; then measure the same point again with the load on.');
  say(`${at('verdict').textContent} First: ${groups[0].suspects[0].fault.words}.${test ? ` Next test: ${at('test').textContent}` : ''}`);
}

function testWords({ kind, number, state }) {
  const id = known.states[state].id;
  if (kind === 'fuse') return `put a new fuse ${known.fuses[number].id} of the same rating in and go through the states once: does it hold?`;
  if (kind === 'look') return `look at ${loads[number]} in state '${id}'; it ${shouldWork(number, state) ? 'should work' : 'should be off'}`;
  const expected = soundV(state, number, kind === 'lost');
  return kind === 'lost' ? `volts from the battery's live post to ${pointWords(measured[number])} (${places[number]}) in state '${id}'; ${expected.toFixed(2)} V when all is well`
    : `volts at ${pointWords(measured[number])} (${places[number]}) in state '${id}'; ${zero(expected).toFixed(1)} V when all is well`;
}

const zero = volts => Math.abs(volts) < 0.05 ? 0 : volts;

function outcomeWords({ kind }, { low, high }) {
  if (kind === 'fuse') return low ? 'opens again' : 'holds';
  if (kind === 'look') return loadWords[low];
  return high - low < 0.1 ? `about ${zero((low + high) / 2).toFixed(1)} V` : `${zero(low).toFixed(1)} to ${zero(high).toFixed(1)} V`;
}

function outcomeItem(outcome) {
  const likely = outcome.leaves.filter((l, i) => i === 0 || l.share >= 0.02 * outcome.share);
  return made('li', `${outcomeWords(test, outcome)} (${percent(outcome.share)}): then ${likely.slice(0, 3).map(l => l.fault.words).join('; or ')}${likely.length > 3 ? `; or ${likely.length - 3} more` : ''}`);
}

// the test with what each outcome would mean, and the ways to answer it
function showTest(next, otherwise) {
  test = next;
  at('test').textContent = next ? `${testWords(next)} (${Number(next.minutes.toFixed(1))} min)` : otherwise;
  at('outcomes').replaceChildren(...(next ? next.outcomes.filter(o => o.share >= leastShare).slice(0, mostOutcomes).map(outcomeItem) : []));
  const measures = next?.kind === 'volts' || next?.kind === 'lost';
  at('testnote').hidden = !measures;
  at('testplace').hidden = !next;
  at('testskip').hidden = !measures;
  const answers = next?.kind === 'fuse' ? [['It holds', true], ['It opens again', false]] : next?.kind === 'look' ? (shouldWork(next.number, next.state) ? [0, 1, 2] : [3, 4]).map(seen => [loadWords[seen], seen]) : [];
  at('testanswers').replaceChildren(...answers.map(([words, answer]) => pressButton(words, () => answerTest(answer))));
}

function answerTest(answer) {
  const { kind, number, state } = test;
  if (kind === 'look') {
    noteSeen(number, state, answer);
    return;
  }
  noted.tries.set(number, { fuse: number, holds: answer });
  showReadings();
}

function noteTest(text) {
  const toLive = test.kind === 'lost';
  noteVolts(text, { name: pointWords(measured[test.number]), point: test.number, state: test.state, toLive, expected: soundV(test.state, test.number, toLive) });
}

// the state and the place of the test, on the drawing
function showPlace() {
  chosenState.index = test.state;
  at('state').value = test.state;
  const name = test.kind === 'fuse' ? known.fuses[test.number].id : test.kind === 'look' ? loads[test.number] : measured[test.number].replace(', cabin side', '');
  const dot = name.lastIndexOf('.');
  const cavity = dot < 0 ? '' : `${name.slice(0, dot)}:${name.slice(dot + 1)}`;
  if (cavityWires.has(cavity)) chooseCavity(cavity);
  else if (test.kind === 'fuse' || fuses.has(name)) chooseThing(name);
  else chooseThing(test.kind === 'look' ? known.things.map(t => t.id).filter(id => name.startsWith(id)).sort((a, b) => b.length - a.length)[0] ?? name : name.slice(0, dot));
  showStop();
}

export function startReadings() {
  at('load').append(...loads.map((l, i) => { const o = made('option', l); o.value = l; o.dataset.number = i; return o; }));
  at('does').append(...[2, 1, 3, 0].map(c => { const o = made('option', loadWords[c]); o.value = c; return o; }));
  at('noteload').addEventListener('submit', e => { e.preventDefault(); noteSeen(faultLoad(at('load').value), chosenState.index, Number(at('does').value)); });
  for (const [form, field, take] of [['note', 'reading', note], ['testnote', 'testreading', noteTest]]) {
    at(form).addEventListener('submit', e => {
      e.preventDefault();
      const text = at(field).value;
      at(field).value = '';
      take(text);
    });
  }
  at('testplace').addEventListener('click', showPlace);
  at('testskip').addEventListener('click', () => { noted.skipped.push({ point: test.number, state: test.state }); showReadings(); });
  at('forget').addEventListener('click', () => {
    for (const notes of [noted.readings, noted.loads, noted.tries]) notes.clear();
    noted.skipped.length = 0;
    showReadings();
  });
  showReadings();
}
