import { known, at, made, build, chosenState } from './1-known.js';
import { startDrawings, showBuild, setBlack, under, drawings } from './2-drawing.js';
import { chosen, chooseWire, chooseCavity, chooseThing, clearChoice, step, showStop } from './3-circuit.js';
import { startSearch } from './4-search.js';
import { startReadings } from './5-readings.js';
// puts the parts together and listens
function press(x, y) {
  const mark = under(x, y);
  if (!mark) return;
  if (mark.cavity) chooseCavity(mark.cavity);
  else if (mark.wire || mark.for) chooseWire(mark.wire ?? mark.for);
  else chooseThing(mark.load ?? mark.fuse);
}

function choiceOf(option) {
  const label = made('label', option.id);
  const select = made('select');
  select.id = `option-${known.options.indexOf(option)}`;
  label.htmlFor = select.id;
  select.append(...option.choices.map(c => { const o = made('option', c); o.value = c; o.selected = c === option.chosen; return o; }));
  select.addEventListener('change', () => { build.set(option.id, select.value); showBuild(); showStop(); });
  return [label, select];
}

let pressed = null;
at('stage').addEventListener('pointerdown', e => { pressed = [e.clientX, e.clientY]; });
at('stage').addEventListener('click', e => { if (pressed && Math.hypot(e.clientX - pressed[0], e.clientY - pressed[1]) < 6) press(e.clientX, e.clientY); });
document.addEventListener('keydown', e => { if (e.key === 'Escape' && !at('chosen').hidden) clearChoice(); });
at('back').addEventListener('click', () => step(-1));
at('on').addEventListener('click', () => step(1));
at('clear').addEventListener('click', clearChoice);
at('print').addEventListener('click', () => window.print());
at('way').addEventListener('change', () => { chosen.way = Number(at('way').value); chosen.stop = 0; showStop(); });
at('state').append(...known.states.map((s, i) => { const o = made('option', `${s.id} (key ${s.key}, engine ${s.engine})`); o.value = i; o.selected = i === chosenState.index; return o; }));
at('state').addEventListener('change', () => { chosenState.index = Number(at('state').value); showStop(); });
at('options').append(...known.options.flatMap(choiceOf));
at('black').addEventListener('change', () => setBlack(at('black').checked));
at('large').addEventListener('change', () => document.documentElement.classList.toggle('large', at('large').checked));
startDrawings();
startSearch();
startReadings();
showBuild();
document.documentElement.dataset.ready = String(Math.round(performance.now()));
