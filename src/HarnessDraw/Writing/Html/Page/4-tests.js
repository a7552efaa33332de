import { faultV, loads, measured, meterV, minutes, opens, parts, placed, rules, seenOf, shouldWork, soundV, sourceAfter } from './4-suspects.js';
// the test that tells most a minute: bits as the program itself counts them
const bits = mass => mass > 0 ? -mass * Math.log2(mass) : 0;
const kinds = ['volts', 'lost', 'fuse', 'look'];

function casesOf(ranked) {
  const cases = ranked.slice(0, rules.mostSuspects).filter((s, i) => i === 0 || s.share >= rules.leastProbability)
    .flatMap(suspect => suspect.fault.cases.map((_, variant) => ({ fault: suspect.fault, variant, mass: suspect.ofVariant[variant] })));
  const whole = cases.reduce((sum, c) => sum + c.mass, 0);
  for (const c of cases) c.mass /= whole;
  return cases;
}

// for each fault the case behind its last: variants of one fault follow one another
const endsOf = cases => cases.map((_, i) => i + 1).filter(i => i === cases.length || cases[i].fault !== cases[i - 1].fault);

// at most: which of the faults it is that move the point at all, or that it is none of them
function bitsBound(values, cases, ends, sound) {
  const meter = meterV(sound);
  let [most, untouched, c] = [0, 0, 0];
  for (const end of ends) {
    let [whole, touched] = [0, false];
    for (; c < end; c++) {
      whole += cases[c].mass;
      touched ||= Math.abs(values[c] - sound) >= meter;
    }
    if (touched) most += bits(whole);
    else untouched += whole;
  }
  return most + bits(untouched);
}

const entropy = (masses, from, to, whole) => {
  let sum = 0;
  for (let b = from; b < to; b++) sum += bits(masses[b] / whole);
  return sum;
};

// entropy of what the meter may show, less what would still be open of it if the fault were known
function readingBits(at, sigma, cases, ends, common, commonSigma) {
  const reach = rules.reach;
  let [low, high] = [common - reach * commonSigma, common + reach * commonSigma];
  for (let i = 0; i < at.length; i++) {
    low = Math.min(low, at[i] - reach * sigma[i]);
    high = Math.max(high, at[i] + reach * sigma[i]);
  }
  const count = Math.min(rules.mostBins, Math.trunc(high - low) + 2);
  const [all, own] = [new Float64Array(count), new Float64Array(count)];
  const bin = steps => Math.min(count - 1, Math.max(0, Math.trunc(steps)));
  const spread = (where, width, mass) => {
    const [from, to] = [bin(where - reach * width), bin(where + reach * width)];
    const shape = [];
    let sum = 0;
    for (let b = from; b <= to; b++) sum += shape[b - from] = Math.exp(-(((b + 0.5 - where) / width) ** 2) / 2);
    for (let b = from; b <= to; b++) own[b] += mass * shape[b - from] / sum;
  };
  let [told, untouched, begin] = [0, 0, 0];
  const add = (from, to, whole) => {
    told -= whole * entropy(own, from, to, whole);
    for (let b = from; b < to; b++) all[b] += own[b];
  };
  for (const end of ends) {
    let [whole, alike, from, to] = [0, true, count, 0];
    for (let i = begin; i < end; i++) {
      whole += cases[i].mass;
      alike &&= at[i] === common && sigma[i] === commonSigma;
      from = Math.min(from, bin(at[i] - reach * sigma[i] - low));
      to = Math.max(to, bin(at[i] + reach * sigma[i] - low) + 1);
    }
    if (alike) untouched += whole;
    else if (whole > 0) {
      own.fill(0, from, to);
      for (let i = begin; i < end; i++) spread(at[i] - low, sigma[i], cases[i].mass);
      add(from, to, whole);
    }
    begin = end;
  }
  if (untouched > 0) {
    own.fill(0);
    spread(common - low, commonSigma, untouched);
    add(0, count, untouched);
  }
  return told + entropy(all, 0, count, 1);
}

// what is seen tells: entropy of the outcomes less what would still be open of them if the fault were known
function outcomeBits(cases, ends, outcomes) {
  const all = new Map();
  let [sum, begin] = [0, 0];
  for (const end of ends) {
    const own = new Map();
    let whole = 0;
    for (let i = begin; i < end; i++) {
      whole += cases[i].mass;
      own.set(outcomes[i], (own.get(outcomes[i]) ?? 0) + cases[i].mass);
    }
    for (const [outcome, mass] of own) {
      all.set(outcome, (all.get(outcome) ?? 0) + mass);
      if (whole > 0) sum -= whole * bits(mass / whole);
    }
    begin = end;
  }
  for (const mass of all.values()) sum += bits(mass);
  return sum;
}

function goodIn(cases, ends, state, evidence, most) {
  const good = [];
  const consider = (kind, number, cost, told) => {
    if (told < rules.leastBits || told / cost < rules.asGood * most.worth) return;
    good.push({ kind, number, state, minutes: cost, bits: told, worth: told / cost });
    most.worth = Math.max(most.worth, told / cost);
  };
  const isRead = (p, toLive) => evidence.readings.some(r => r.point === p && r.state === state && r.toLive === toLive) || evidence.skipped.some(r => r.point === p && r.state === state);
  const values = new Float64Array(cases.length);
  const source = sourceAfter(evidence.readings.filter(r => r.state === state).map(r => r.volts));
  for (let p = 0; p < measured.length; p++) {
    for (const toLive of [false, true]) {
      if (isRead(p, toLive)) continue;
      let [low, high] = [Infinity, -Infinity];
      for (let c = 0; c < cases.length; c++) {
        values[c] = faultV(cases[c].fault, cases[c].variant, state, p, toLive);
        low = Math.min(low, values[c]);
        high = Math.max(high, values[c]);
      }
      const [sound, cost] = [soundV(state, p, toLive), minutes[p] + rules.setUpMinutes];
      if (!parts(low, high) || bitsBound(values, cases, ends, sound) < rules.asGood * most.worth * cost) continue;
      const [common, commonSigma] = placed(sound, sound, state, false, source);
      const near = meterV(sound);
      const places = cases.map((c, i) => Math.abs(values[i] - sound) < near ? [common, commonSigma] : placed(values[i], sound, state, c.fault.unknownOhm, source));
      consider(toLive ? 1 : 0, p, cost, readingBits(places.map(x => x[0]), places.map(x => x[1]), cases, ends, common, commonSigma));
    }
  }
  for (let l = 0; l < loads.length; l++) {
    if (evidence.answers.some(a => a.load === l && a.state === state)) continue;
    const outcomes = cases.map(c => seenOf(c.fault, c.variant, state, l));
    if (outcomes.some(o => o !== outcomes[0])) consider(3, l, rules.lookMinutes + rules.setUpMinutes, outcomeBits(cases, ends, outcomes));
  }
  return good;
}

// hedged: with weights that are half believed, for the choice; ranked: for what the outcomes would mean
export function nextTest(hedged, ranked, evidence, states) {
  const cases = casesOf(hedged);
  const ends = endsOf(cases);
  const most = { worth: 0 };
  const all = states.flatMap(s => goodIn(cases, ends, s, evidence, most));
  for (const fuse of new Set(cases.flatMap(c => opens(c.fault, c.variant)))) {
    const cost = rules.fuseMinutes + rules.setUpMinutes;
    const told = outcomeBits(cases, ends, cases.map(c => opens(c.fault, c.variant).includes(fuse)));
    if (!evidence.tries.some(t => t.fuse === fuse) && told >= rules.leastBits) all.push({ kind: 2, number: fuse, state: states[0], minutes: cost, bits: told, worth: told / cost });
  }
  const top = Math.max(...all.map(t => t.worth));
  const [best] = all.filter(t => t.worth >= rules.asGood * top).sort((a, b) => a.minutes - b.minutes || a.state - b.state || a.kind - b.kind || a.number - b.number);
  return best ? { ...best, kind: kinds[best.kind], outcomes: outcomesOf(casesOf(ranked), best) } : null;
}

// readings that a meter tells apart are different outcomes
function outcomesOf(cases, { kind, number, state }) {
  const shows = c => kind < 2 ? faultV(c.fault, c.variant, state, number, kind === 1) : kind === 2 ? Number(opens(c.fault, c.variant).includes(number)) : seenOf(c.fault, c.variant, state, number);
  const ordered = cases.map(c => ({ ...c, value: shows(c) })).sort((a, b) => a.value - b.value);
  const outcomes = [];
  for (const c of ordered) {
    const last = outcomes.at(-1);
    if (last && !(kind < 2 ? parts(last.high, c.value) : last.high !== c.value)) last.cases.push(c);
    else outcomes.push({ low: c.value, cases: [c] });
    outcomes.at(-1).high = c.value;
  }
  for (const outcome of outcomes) {
    const masses = new Map();
    for (const c of outcome.cases) masses.set(c.fault, (masses.get(c.fault) ?? 0) + c.mass);
    outcome.share = outcome.cases.reduce((sum, c) => sum + c.mass, 0);
    outcome.leaves = [...masses].map(([fault, share]) => ({ fault, share })).sort((a, b) => b.share - a.share);
  }
  return outcomes.sort((a, b) => b.share - a.share);
}
