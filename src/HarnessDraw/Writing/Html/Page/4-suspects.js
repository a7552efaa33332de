import { known } from './1-known.js';
// every single fault with what it does, worked out beforehand: held against what was noted, as the program itself does it
export const { points: measured, places, minutes, loads, should, sound, live, rules, faults, sets, rows, cases } = known.faultTable;
export const loadWords = ['works', 'dim or slow', 'dead', 'on though it should be off', 'off as it should be'];
export const [worksClass, dimClass, deadClass, onClass, offClass] = [0, 1, 2, 3, 4];
const quantiles = [-1.2816, -0.5244, 0, 0.5244, 1.2816];
const leastMoved = 1e-3;
const stateCount = known.states.length;
const pointIndex = new Map(measured.map((name, i) => [name, i]));
const loadIndex = new Map(loads.map((name, i) => [name, i]));
const unfolded = [];

export const faultPoint = node => pointIndex.get(node) ?? null;
export const faultLoad = name => loadIndex.get(name);
export const faultCount = faults.length;
export const shouldWork = (load, state) => should[state * loads.length + load] === 1;

// a step is as wide as what a meter may be off; the table tells parts of it
const voltsOf = code => Math.sign(code) * 2 * Math.expm1(Math.abs(code) / rules.fine / 100);
export const stepsOf = volts => Math.sign(volts) * 100 * Math.log1p(Math.abs(volts) / 2);
export const meterV = volts => 0.02 + 0.01 * Math.abs(volts);
export const parts = (a, b, slack = 1) => Math.abs(a - b) > slack * (meterV(a) + meterV(b));

// the table rounds: what lies just two steps apart there may be alike
const rounded = 1 + 0.5 / rules.fine / 2;
export const liveV = live.map(steps => steps * rules.liveStepV);

// steps are counted from the nearer pole of the battery
function decoded(code, post) {
  const size = code > rules.far / 2 ? Math.abs(post) - voltsOf(rules.far - code) : voltsOf(code);
  return post < 0 ? -size : size;
}

const soundVolts = sound.map((code, i) => decoded(code, liveV[Math.floor(i / measured.length)]));

// volts of every point, what every load does as a share of what it should, volts of the live post: of one case in one state
function allShown(number, state) {
  const key = number * stateCount + state;
  if (unfolded[key]) return unfolded[key];
  const off = new Int16Array(measured.length + loads.length + 1);
  const row = rows[cases[number][state]];
  for (let i = 0; i < row.length; i += 2) {
    let member = 0;
    sets[row[i + 1]].forEach((ahead, n) => { off[member = n ? member + ahead : ahead] = row[i]; });
  }
  const all = new Float64Array(off.length);
  const post = all[off.length - 1] = liveV[state] + off[off.length - 1] * rules.liveStepV;
  for (let p = 0; p < measured.length; p++) all[p] = decoded(sound[state * measured.length + p] + off[p], post);
  for (let l = 0; l < loads.length; l++) all[measured.length + l] = should[state * loads.length + l] + off[measured.length + l] / 100;
  return unfolded[key] = all;
}

export const soundV = (state, point, toLive) => toLive ? liveV[state] - soundVolts[state * measured.length + point] : soundVolts[state * measured.length + point];

export function faultV(fault, variant, state, point, toLive) {
  const all = allShown(fault.cases[variant], state);
  const post = all[all.length - 1];
  let volts = all[point];
  const own = fault.own ?? [];
  for (let i = 0; i < own.length; i += 4) if (own[i] === variant && own[i + 1] === state && own[i + 2] === point) volts = decoded(own[i + 3], post);
  return toLive ? post - volts : volts;
}

// the fuses that a fault opens, by their place among all
export const opens = (fault, variant) => cases[fault.cases[variant]].slice(stateCount);

const shareOf = (fault, variant, state, load) => allShown(fault.cases[variant], state)[measured.length + load];

export function classOf(share, works) {
  if (works) return share < rules.deadBelow ? deadClass : share < rules.dimBelow ? dimClass : worksClass;
  return share >= rules.deadBelow ? onClass : offClass;
}

export const seenOf = (fault, variant, state, load) => classOf(shareOf(fault, variant, state, load), shouldWork(load, state));

function sigmaOf(predicted, soundVolts, live, unknownOhm) {
  const meter = rules.meterShare * meterV(predicted);
  const free = Math.min(Math.abs(predicted - soundVolts), Math.abs(predicted), Math.abs(live - predicted));
  return Math.hypot(meter, (unknownOhm ? rules.ohmSpread : rules.partSpread) * free);
}

// volts of the sources, as shares of those that were solved, and how likely each is: nobody knows them, and every reading of a state moves with them
const sources = Array.from({ length: 2 * rules.sourceHalf + 1 }, (_, i) => 1 + (i - rules.sourceHalf) * rules.sourceStep);
const sourceWeights = sources.map(s => Math.exp(-((s - 1) ** 2) / (2 * rules.sourceSpread ** 2)));
const sourceLogs = sourceWeights.map(w => Math.log(w / sourceWeights.reduce((a, b) => a + b, 0)));

// how well a source is known once some readings of the state are
export const sourceAfter = volts => 1 / Math.sqrt(volts.reduce((sum, v) => sum + (Math.abs(v) / (rules.meterShare * meterV(v))) ** 2, 1 / rules.sourceSpread ** 2));

// where a reading lies, in steps of a meter, and its standard deviation there
export const placed = (volts, soundVolts, state, unknownOhm, source) => [stepsOf(volts), Math.hypot(sigmaOf(volts, soundVolts, liveV[state], unknownOhm), source * volts) / meterV(volts)];

// a wrong reading is one that was taken at another point: how many of them show such volts
function elsewhere(reading, source) {
  let alike = 0;
  for (let p = 0; p < measured.length; p++) if (!parts(source * soundV(reading.state, p, reading.toLive), reading.volts)) alike++;
  return Math.max(rules.leastElsewhere, alike / measured.length);
}

// a reading held against volts, by what the sources may have; what predicts the same volts is reckoned once
function readingScores(reading) {
  const anywhere = sources.map(s => elsewhere(reading, s));
  const [sound, live, found] = [soundV(reading.state, reading.point, reading.toLive), liveV[reading.state], [new Map(), new Map()]];
  return (predicted, unknownOhm) => {
    const held = found[unknownOhm ? 1 : 0];
    if (!held.has(predicted)) held.set(predicted, sources.map((s, i) => {
      const sigma = sigmaOf(s * predicted, s * sound, s * live, unknownOhm);
      const z = (reading.volts - s * predicted) / sigma;
      return Math.log((1 - rules.wrong) * (rules.meterShare * meterV(s * predicted) / sigma) * Math.exp(-z * z / 2) + rules.wrong * anywhere[i]);
    }));
    return held.get(predicted);
  };
}

// readings of each state together, by what its sources may have
function stateLogs(readings, scores, voltsAt, unknownOhm) {
  const states = new Map();
  readings.forEach((r, n) => {
    const logs = scores[n](voltsAt(r), unknownOhm);
    const known = states.get(r.state);
    states.set(r.state, known ? known.map((log, i) => log + logs[i]) : logs);
  });
  return states;
}

function logMean(logs) {
  const weighed = logs.map((log, i) => log + sourceLogs[i]);
  const most = Math.max(...weighed);
  return most + Math.log(weighed.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

// by state the share of the solved volts that suits its readings best
function bestSources(readings, voltsAt, unknownOhm) {
  const best = new Map();
  for (const [state, logs] of stateLogs(readings, readings.map(readingScores), voltsAt, unknownOhm)) {
    let at = rules.sourceHalf;
    logs.forEach((log, i) => { if (log + sourceLogs[i] - logs[at] - sourceLogs[at] > 1e-9) at = i; });
    best.set(state, sources[at]);
  }
  return best;
}

function answerLog(seen, share, works) {
  const below = limit => 1 / (1 + Math.exp((share - limit) * 1.7 / rules.shareBlur));
  let right = 0;
  if (works && seen === deadClass) right = below(rules.deadBelow);
  else if (works && seen === worksClass) right = 1 - below(rules.dimBelow);
  else if (works && seen === dimClass) right = Math.max(0, below(rules.dimBelow) - below(rules.deadBelow));
  else if (!works && seen === onClass) right = 1 - below(rules.deadBelow);
  else if (!works) right = below(rules.deadBelow);
  return Math.log((1 - rules.wrong) * right + rules.wrong / (works ? 2 : 1) * (1 - right));
}

// ohms that nobody knows move all loads together: the answers are held against five equally likely ohms
function answersLog(fault, variant, answers) {
  const logs = quantiles.map(() => 0);
  for (const { load, state, seen } of answers) {
    const [share, works] = [shareOf(fault, variant, state, load), shouldWork(load, state)];
    const moved = fault.unknownOhm ? rules.ohmBlur * Math.abs(share - (works ? 1 : 0)) : 0;
    quantiles.forEach((q, i) => { logs[i] += answerLog(seen, share + (moved < leastMoved ? 0 : q * moved), works); });
  }
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0) / logs.length);
}

const isWrong = answer => answer.seen !== worksClass && answer.seen !== offClass;

// readings that are not those of the sound vehicle, whatever its sources have; where they may all be, those that are off with the sources as solved
function offReadings(readings) {
  const soundAt = r => soundV(r.state, r.point, r.toLive);
  const best = bestSources(readings, soundAt, false);
  const off = readings.filter(r => parts(r.volts, best.get(r.state) * soundAt(r)));
  return off.length ? off : readings.filter(r => parts(r.volts, soundAt(r)));
}

// faults that move nothing of what is complained of are no explanation
function moving({ answers, readings }) {
  const complaints = answers.filter(isWrong);
  const off = complaints.length ? [] : offReadings(readings);
  const found = faults.filter(fault => fault.cases.some((_, v) => complaints.some(a => { const seen = seenOf(fault, v, a.state, a.load); return seen !== worksClass && seen !== offClass; })
    || off.some(r => parts(faultV(fault, v, r.state, r.point, r.toLive), soundV(r.state, r.point, r.toLive)))));
  return found.length ? found : faults;
}

// all faults that can have to do with it, held against what was noted
export function scoreFaults(evidence) {
  const scores = evidence.readings.map(readingScores);
  return moving(evidence).map(fault => ({
    fault,
    logs: fault.cases.map((_, v) => answersLog(fault, v, evidence.answers) - Math.log(fault.cases.length)
      + [...stateLogs(evidence.readings, scores, r => faultV(fault, v, r.state, r.point, r.toLive), fault.unknownOhm).values()].reduce((sum, logs) => sum + logMean(logs), 0)
      + evidence.tries.reduce((sum, t) => sum + Math.log(opens(fault, v).includes(t.fuse) === t.holds ? rules.wrong : 1 - rules.wrong), 0)),
  }));
}

// likeliest first; trust: how far the weights are believed
export function rankFaults(scored, trust = 1) {
  const weighed = scored.map(({ fault, logs }) => logs.map(log => log + trust * Math.log(fault.weight)));
  const most = weighed.reduce((top, logs) => Math.max(top, ...logs), -Infinity);
  const masses = weighed.map(logs => logs.map(log => Math.exp(log - most)));
  const whole = masses.flat().reduce((a, b) => a + b, 0);
  return scored.map(({ fault }, i) => ({ fault, share: masses[i].reduce((a, b) => a + b, 0) / whole, ofVariant: masses[i].map(m => m / whole) })).sort((a, b) => b.share - a.share);
}

// suspects that nothing tells apart without unplugging or opening the wrap, likeliest group first
export function suspectGroups(ranked, states) {
  const groups = [];
  for (const suspect of ranked.slice(0, 60).filter((s, i) => i === 0 || s.share >= 1e-4)) {
    const group = groups.find(g => alike(g.suspects[0].fault, suspect.fault, states));
    if (group) group.suspects.push(suspect);
    else groups.push({ suspects: [suspect] });
  }
  for (const group of groups) group.share = group.suspects.reduce((sum, s) => sum + s.share, 0);
  return groups.sort((a, b) => b.share - a.share);
}

function alike(a, b, states) {
  const same = (v, s) => loads.every((_, l) => seenOf(a, v, s, l) === seenOf(b, v, s, l))
    && measured.every((_, p) => !parts(faultV(a, v, s, p, false), faultV(b, v, s, p, false), rounded) && !parts(faultV(a, v, s, p, true), faultV(b, v, s, p, true), rounded));
  return a.cases.length === b.cases.length && a.cases.every((_, v) => opens(a, v).sort().join() === opens(b, v).sort().join() && states.every(s => same(v, s)));
}

// true when a fault explains all that was noted
export function explains(fault, { readings, answers, tries }) {
  return fault.cases.some((_, v) => {
    const voltsAt = r => faultV(fault, v, r.state, r.point, r.toLive);
    const best = bestSources(readings, voltsAt, fault.unknownOhm);
    return answers.every(a => {
      const [share, works] = [shareOf(fault, v, a.state, a.load), shouldWork(a.load, a.state)];
      const moved = fault.unknownOhm ? rules.ohmBlur * Math.abs(share - (works ? 1 : 0)) : 0;
      return quantiles.some(q => answerLog(a.seen, share + q * moved, works) > Math.log(0.1));
    }) && readings.every(r => {
      const source = best.get(r.state);
      const predicted = source * voltsAt(r);
      return Math.abs(r.volts - predicted) <= 4 * sigmaOf(predicted, source * soundV(r.state, r.point, r.toLive), source * liveV[r.state], fault.unknownOhm);
    }) && tries.every(t => t.holds !== opens(fault, v).includes(t.fuse));
  });
}

// states in which something was measured or is wrong, those with most first, then those that show most of what works
export function testedStates({ answers, readings, skipped }) {
  const measuredIn = new Set([...readings, ...skipped].map(r => r.state));
  const dead = new Set(answers.filter(a => a.seen === deadClass).map(a => a.load));
  const allDead = dead.size > 1 && loads.every((_, l) => dead.has(l) || !known.states.some((_, s) => shouldWork(l, s)));
  const possible = known.states.map((_, s) => s).filter(s => !allDead || measuredIn.has(s) || known.states[s].engine !== 'running');
  const wrongIn = s => answers.filter(a => a.state === s && isWrong(a)).length;
  const states = possible.filter(s => measuredIn.has(s) || wrongIn(s)).sort((a, b) => measuredIn.has(b) - measuredIn.has(a) || wrongIn(b) - wrongIn(a) || a - b).slice(0, Math.max(rules.mostStates, measuredIn.size));
  const works = answers.filter(a => a.seen === worksClass);
  const shownLoads = new Set(works.filter(a => states.includes(a.state)).map(a => a.load));
  const more = s => new Set(works.filter(a => a.state === s && !shownLoads.has(a.load)).map(a => a.load)).size;
  while (states.length < rules.mostStates) {
    const next = possible.filter(s => !states.includes(s)).sort((a, b) => more(b) - more(a) || a - b)[0];
    if (next === undefined || !more(next)) break;
    works.filter(a => a.state === next).forEach(a => shownLoads.add(a.load));
    states.push(next);
  }
  return states.length ? states.sort((a, b) => a - b) : known.states.map((_, s) => s).slice(0, rules.mostStates);
}

// what was noted in some of the states
export const noteIn = (evidence, states) => ({
  answers: evidence.answers.filter(a => states.includes(a.state)),
  readings: evidence.readings.filter(r => states.includes(r.state)),
  skipped: evidence.skipped.filter(r => states.includes(r.state)),
  tries: evidence.tries,
});
