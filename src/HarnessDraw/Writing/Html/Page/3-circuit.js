import { pointWords, known, at, build, wires, fuses, things, cavityWires, circuitWires, circuitWays, made, isBuilt, colourWords, voltsAt, say, chosenState } from './1-known.js';
import { light, bring } from './2-drawing.js';
// the chosen circuit: what is lit, its ways, and the point at which the meter is
export const chosen = { ways: [], way: 0, stop: 0 };

export function chooseWire(id, name) {
  const wire = wires.get(id);
  if (!wire) return;
  const through = known.ways.filter(w => w.hops.some(h => h.wire === id));
  const way = [...through.filter(w => w.circuit === wire.circuit), ...through.filter(w => w.circuit !== wire.circuit)];
  choose(name ?? `Wire ${id}`, [['Circuit', wire.circuit], ['Colour', `${wire.colour}, ${colourWords(wire.colour)}`], ['Size', wire.size], ['Length', wire.lengthMm === null ? 'not known' : `${wire.lengthMm} mm`], ['From', pointWords(wire.from)], ['To', pointWords(wire.to)], ['Fuse', wire.protectedBy.join(', ') || 'none']],
    way.length ? way : circuitWays.get(wire.circuit) ?? [], circuitWires.get(wire.circuit), [], id);
}

export function chooseCavity(id) {
  const held = cavityWires.get(id) ?? [];
  const wire = held.find(w => isBuilt(wires.get(w))) ?? held[0];
  if (wire) chooseWire(wire, `Cavity ${pointWords(id)}`);
  else say(`Cavity ${pointWords(id)} holds no wire`);
}

export function chooseCircuit(id) {
  choose(`Circuit ${id}`, [['Wires', (circuitWires.get(id) ?? []).join(', ')]], circuitWays.get(id) ?? [], circuitWires.get(id) ?? [], []);
}

export function chooseThing(id) {
  if (fuses.has(id)) {
    const fuse = fuses.get(id);
    const behind = fuse.wires.filter(w => wires.has(w));
    const ways = known.ways.filter(w => w.stops.some(s => s.node.startsWith(`${id}.`)) || w.hops.some(h => behind.includes(h.wire)));
    choose(`Fuse ${id}`, [['Rating', fuse.ratingA === null ? 'not known' : `${fuse.ratingA} A`], ['Wires behind it', behind.join(', ')]], ways, behind, [id]);
    return;
  }
  const thing = things.get(id);
  const ways = known.ways.filter(w => w.stops.some(s => s.node.startsWith(`${id}.`)));
  const ends = known.wires.filter(w => w.from === id || w.to === id || w.from.startsWith(`${id}.`) || w.to.startsWith(`${id}.`)).map(w => w.id);
  choose(id, thing ? [['Kind', thing.kind], ['Place', `${thing.place}, ${thing.side} side`], ['Wires', ends.join(', ')]] : [], ways, ends, [id]);
}

function choose(name, facts, ways, ownWires, marks, first) {
  const lit = new Set(ownWires);
  for (const way of ways) for (const hop of way.hops) if (hop.wire) lit.add(hop.wire);
  const ends = new Set(marks);
  for (const way of ways) for (const stop of way.stops) ends.add(stop.node.replace(/\.[^.]*$/, ''));
  light([...lit], [...ends]);
  Object.assign(chosen, { ways, way: 0, stop: 0 });
  at('hint').hidden = true;
  at('chosen').hidden = false;
  at('name').textContent = name;
  at('facts').replaceChildren(...facts.filter(f => f[1]).flatMap(([term, words]) => [made('dt', term), made('dd', words)]));
  at('way').replaceChildren(...ways.map((w, i) => { const o = made('option', w.title); o.value = i; return o; }));
  for (const id of ['way', 'waylabel']) at(id).hidden = ways.length < 2;
  at('stepper').hidden = ways.length === 0;
  say(`${name}: ${lit.size} wires lit, ${ways.length} ${ways.length === 1 ? 'way' : 'ways'} of current`);
  chosen.first = first ?? [...lit][0];
  showStop();
}

export function clearChoice() {
  light(null);
  Object.assign(chosen, { ways: [], way: 0, stop: 0 });
  at('chosen').hidden = true;
  at('hint').hidden = false;
  say('Everything is lit');
}

export function step(by) {
  const way = chosen.ways[chosen.way];
  if (!way) return;
  goTo(chosen.stop + by);
}

export function goTo(stop) {
  const way = chosen.ways[chosen.way];
  chosen.stop = Math.min(way.stops.length - 1, Math.max(0, stop));
  showStop();
  const wire = way.hops[Math.min(chosen.stop, way.hops.length - 1)]?.wire;
  if (wire) bring(wire);
  const here = way.stops[chosen.stop];
  say(`Point ${chosen.stop + 1} of ${way.stops.length}: ${here.name}, ${here.where}. ${expectedWords(way, chosen.stop)}`);
}

// nothing is lost in a link: what is known of one end holds for the other
export function expectedV(way, stop) {
  for (let s = stop; s >= 0; s--) {
    const volts = voltsAt(way.stops[s].node);
    if (volts !== null) return volts;
    if (s === 0 || way.hops[s - 1].kind !== 'link') return null;
  }
  return null;
}

export function expectedWords(way, stop) {
  const volts = expectedV(way, stop);
  return volts === null ? 'no reading can be foretold' : `${volts.toFixed(2)} V`;
}

export function hopWords(hop) {
  const wire = hop.wire && wires.get(hop.wire);
  if (!wire) return hop.words || hop.kind;
  return `wire ${wire.id}, ${wire.colour}, ${wire.size}${wire.lengthMm === null ? '' : `, ${wire.lengthMm} mm`}${isBuilt(wire) ? '' : ' (not in this build)'}`;
}

// what the table of faults is of
export const isChosenBuild = () => known.options.every(o => build.get(o.id) === o.chosen);

export function showStop() {
  const way = chosen.ways[chosen.way];
  at('stops').replaceChildren();
  if (!way) return;
  const here = way.stops[chosen.stop];
  at('stopname').textContent = `${chosen.stop + 1}. ${here.name}`;
  at('stopplace').textContent = here.where;
  at('expected').textContent = `Expect ${expectedWords(way, chosen.stop)}`;
  const state = known.states[chosenState.index];
  at('hop').textContent = `${state ? `State ${state.id}${isChosenBuild() ? '' : '; volts are those of the build with which the page opens'}. ` : ''}${chosen.stop < way.hops.length ? `Then ${hopWords(way.hops[chosen.stop])}` : 'End of the way'}`;
  at('back').disabled = chosen.stop === 0;
  at('on').disabled = chosen.stop === way.stops.length - 1;
  way.stops.forEach((stop, i) => {
    const item = made('li');
    const button = made('button');
    button.type = 'button';
    button.append(made('span', `${stop.name}${i < way.hops.length ? `, then ${hopWords(way.hops[i])}` : ''}`), made('b', expectedV(way, i) === null ? '–' : expectedWords(way, i)));
    button.addEventListener('click', () => { goTo(i); at('stops').children[i]?.firstChild.focus(); });
    if (i === chosen.stop) item.setAttribute('aria-current', 'step');
    item.append(button);
    at('stops').append(item);
  });
}
