import { known } from './1-known.js';
// every single fault with what it does, worked out beforehand: held against what was noted, as the program itself does it
const { points: measured, loads, should, sound, live, trust, faults, sets, rows, cases } = known.faultTable;
const oneInTwenty = Math.log(0.05);
export const loadWords = ['works', 'dim or slow', 'dead', 'on though it should be off', 'off as it should be'];
const [worksClass, offClass] = [0, 4];
const pointIndex = new Map(measured.map((name, i) => [name, i]));
const loadIndex = new Map(loads.map((name, i) => [name, i]));
let before = 0;
const members = sets.map(set => new Set(set.map((n, i) => before = i ? before + n : n)));

export const faultPoint = node => pointIndex.get(node) ?? null;
export const faultLoads = loads;
export const faultCount = faults.length;
export const shouldWork = (load, state) => should[state * loads.length + loadIndex.get(load)] === 1;

// a step is as wide as what a meter may be off
const voltsOf = step => Math.sign(step) * 2 * Math.expm1(Math.abs(step) / 100);
export const meterV = volts => 0.02 + 0.01 * Math.abs(volts);

// the value of a point or load in a row: pairs of value and set
function inRow(row, number, otherwise) {
  for (let i = 0; i < row.length; i += 2) if (members[row[i + 1]].has(number)) return row[i];
  return otherwise;
}

const rowOf = (fault, variant, state) => rows[cases[fault.cases[variant]][state]];

function soundStep(state, point) {
  return sound[state * measured.length + point];
}

function faultV(fault, variant, state, point) {
  const own = fault.own ?? [];
  for (let i = 0; i < own.length; i += 4) if (own[i] === variant && own[i + 1] === state && own[i + 2] === point) return voltsOf(own[i + 3]);
  return voltsOf(soundStep(state, point) + inRow(rowOf(fault, variant, state), point, 0));
}

function seenOf(fault, variant, state, load) {
  return inRow(rowOf(fault, variant, state), measured.length + loadIndex.get(load), shouldWork(load, state) ? worksClass : offClass);
}

// a wrong reading is one that was taken at another point: how many of them show such volts
function elsewhere(reading) {
  const step = 100 * Math.sign(reading.volts) * Math.log1p(Math.abs(reading.volts) / 2);
  let alike = 0;
  for (let p = 0; p < measured.length; p++) if (Math.abs(soundStep(reading.state, p) - step) <= 2) alike++;
  return Math.max(trust.leastElsewhere, alike / measured.length);
}

function readingLog(fault, variant, reading) {
  const point = faultPoint(reading.node);
  if (point === null) return 0;
  const predicted = faultV(fault, variant, reading.state, point);
  const free = Math.min(Math.abs(predicted - voltsOf(soundStep(reading.state, point))), Math.abs(predicted), Math.abs(voltsOf(live[reading.state]) - predicted));
  // half a step is lost in the table beside what the meter is off
  const meter = (trust.meterShare + 0.3) * meterV(predicted);
  const sigma = Math.hypot(meter, (fault.unknownOhm ? trust.ohmSpread : trust.partSpread) * free);
  const z = (reading.volts - predicted) / sigma;
  return Math.log((1 - trust.wrong) * (meter / sigma) * Math.exp(-z * z / 2) + trust.wrong * elsewhere(reading));
}

function answerLog(fault, variant, answer) {
  const others = shouldWork(answer.load, answer.state) ? 2 : 1;
  return Math.log(seenOf(fault, variant, answer.state, answer.load) === answer.seen ? 1 - trust.wrong : trust.wrong / others);
}

// all faults with their share of the likelihood, likeliest first
export function rankFaults(readings, answers) {
  const scored = faults.map(fault => fault.cases.map((_, v) => Math.log(fault.weight / fault.cases.length)
    + readings.reduce((sum, r) => sum + readingLog(fault, v, r), 0) + answers.reduce((sum, a) => sum + answerLog(fault, v, a), 0)));
  const most = Math.max(...scored.map(logs => Math.max(...logs)));
  const masses = scored.map(logs => logs.reduce((sum, l) => sum + Math.exp(l - most), 0));
  const whole = masses.reduce((a, b) => a + b, 0);
  return faults.map((fault, i) => ({ fault, share: masses[i] / whole })).sort((a, b) => b.share - a.share);
}

// true when a fault explains all that was noted
export function explains(fault, readings, answers) {
  return fault.cases.some((_, v) => answers.every(a => seenOf(fault, v, a.state, a.load) === a.seen)
    && readings.every(r => readingLog(fault, v, r) > oneInTwenty));
}
