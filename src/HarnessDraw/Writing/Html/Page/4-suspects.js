import { known } from './1-known.js';
// every single fault with what it does, worked out beforehand: held against what was noted
const table = known.faultTable;
const wrongShare = 0.02;
const scoreShare = 0.01;
const scoreV = 0.02;
const ohmSpread = 0.35;
const partSpread = 0.04;
const roundedV = 0.06;
const worksClass = 0, dimClass = 1, deadClass = 2, onWronglyClass = 3, offClass = 4;
export const loadWords = ['works', 'dim or slow', 'dead', 'on though it should be off', 'off as it should be'];
const pointIndex = new Map(table.points.map((name, i) => [name, i]));
const loadIndex = new Map(table.loads.map((name, i) => [name, i]));
const byCase = table.cases.map(c => ({ seen: asMap(c.seen, table.loads.length, 0), volts: asMap(c.volts, table.points.length, 0) }));

// triples of state, thing, value
function asMap(flat, width, from) {
  const map = new Map();
  for (let i = from; i + 2 < flat.length; i += 3) map.set(flat[i] * width + flat[i + 1], flat[i + 2]);
  return map;
}

export const faultPoint = node => pointIndex.get(node) ?? null;
export const faultLoads = table.loads;
export const shouldWork = (load, state) => table.should[state * table.loads.length + loadIndex.get(load)] === 1;
export const faultCount = table.faults.length;

function soundV(state, point) {
  return table.sound[state * table.points.length + point];
}

export function faultV(variant, state, point) {
  for (let i = 1; i + 2 < variant.length; i += 3) if (variant[i] === state && variant[i + 1] === point) return variant[i + 2];
  return byCase[variant[0]].volts.get(state * table.points.length + point) ?? soundV(state, point);
}

function seenOf(variant, state, load) {
  return byCase[variant[0]].seen.get(state * table.loads.length + load) ?? (table.should[state * table.loads.length + load] === 1 ? worksClass : offClass);
}

function readingLog(fault, variant, reading) {
  const point = faultPoint(reading.node);
  if (point === null) return 0;
  const predicted = faultV(variant, reading.state, point);
  const live = table.live[reading.state];
  const free = Math.min(Math.abs(predicted - soundV(reading.state, point)), Math.abs(predicted), Math.abs(live - predicted));
  const meter = roundedV + 0.65 * (scoreV + scoreShare * Math.abs(predicted));
  const sigma = Math.hypot(meter, (fault.unknownOhm ? ohmSpread : partSpread) * free);
  const z = (reading.volts - predicted) / sigma;
  return Math.log((1 - wrongShare) * (meter / sigma) * Math.exp(-z * z / 2) + wrongShare / 2);
}

function answerLog(variant, answer) {
  const seen = seenOf(variant, answer.state, loadIndex.get(answer.load));
  return Math.log(seen === answer.seen ? 1 - wrongShare : wrongShare / 2);
}

// all faults with their share of the likelihood, likeliest first
export function rankFaults(readings, answers) {
  const scored = table.faults.map(fault => {
    const logs = fault.variants.map(v => Math.log(fault.weight / fault.variants.length)
      + readings.reduce((sum, r) => sum + readingLog(fault, v, r), 0) + answers.reduce((sum, a) => sum + answerLog(v, a), 0));
    return { fault, logs };
  });
  const most = Math.max(...scored.flatMap(s => s.logs));
  const masses = scored.map(s => s.logs.reduce((sum, l) => sum + Math.exp(l - most), 0));
  const whole = masses.reduce((a, b) => a + b, 0);
  return scored.map((s, i) => ({ fault: s.fault, share: masses[i] / whole })).sort((a, b) => b.share - a.share);
}

// true when one of the likely faults explains all that was noted
export function explains(fault, readings, answers) {
  return fault.variants.some(v => answers.every(a => seenOf(v, a.state, loadIndex.get(a.load)) === a.seen)
    && readings.every(r => readingLog(fault, v, r) > Math.log(0.05)));
}
