// Figures that open: a number on the page is a button that shows formula, inputs, source and mark.

import { byId, make, shown } from '/desk/dom.js';

const blank = '–';
const marks = {
  R: 'read in the source named', M: 'from memory of the source named: look it up',
  'M✓': 'from memory, borne out by a figure that was read',
  C: 'computed, or common practice', P: 'published', D: 'derived', A: 'an assumption: replace it',
  G: 'given by you or by the shop’s price list',
};
// US unit, metric unit, factor, offset; decimals in each.
const kinds = {
  R: ['', 'm²·K/W', 1 / 5.678263337, 0, 1, 2], U: ['', 'W/m²·K', 5.678263337, 0, 3, 3],
  flux: ['Btu/h·ft²', 'W/m²', 3.154591, 0, 1, 1], temp: ['°F', '°C', 1 / 1.8, -32 / 1.8, 1, 1],
  span: ['°F', 'K', 1 / 1.8, 0, 1, 1], inch: ['in', 'mm', 25.4, 0, 2, 0],
  power: ['Btu/h', 'W', 0.29307107, 0, 0, 0], loss: ['Btu/h·°F', 'W/K', 0.52752793, 0, 0, 0],
  price: ['per ft²', 'per m²', 10.7639104, 0, 2, 2], days: ['°F·d', 'K·d', 1 / 1.8, 0, 0, 0],
  percent: ['%', '%', 1, 0, 0, 0], water: ['g/m²', 'g/m²', 1, 0, 1, 1], pa: ['Pa', 'Pa', 1, 0, 0, 0],
  rate: ['g/m² a day', 'g/m² a day', 1, 0, 2, 2], money: ['', '', 1, 0, 0, 0], years: ['years', 'years', 1, 0, 1, 1],
  share: ['', '', 1, 0, 3, 3], km: ['km', 'km', 1, 0, 0, 0],
};

let steps = new Map();
let answered = {};
let metric = false;

export function readWorking(answer, isMetric) {
  metric = isMetric;
  answered = answer;
  steps = new Map();
  const all = [...answer.working ?? [], ...answer.lines.flatMap((line) => line.working ?? [])];
  for (const step of all) {
    for (const opens of step.opens ?? []) steps.set(opens.pointer, { step, opens });
  }
}

export const isMetric = () => metric;
export const unitOf = (kind) => kinds[kind][metric ? 1 : 0];

/** The figure at a pointer of the answer, or a dash where it is blank. */
export function figure(pointer, kind, withUnit = true) {
  const value = valueAt(pointer);
  if (value === undefined || value === null) return blank;
  const [, , times, plus, us, si] = kinds[kind];
  const text = metric ? shown(value * times + plus, si) : shown(value, us);
  const unit = withUnit && unitOf(kind) ? ` ${unitOf(kind)}` : '';
  if (!steps.has(pointer)) return text + unit;
  const button = make('button', {
    type: 'button', class: 'figure', 'data-figure': pointer, 'aria-haspopup': 'dialog',
  }, text);
  button.addEventListener('click', () => open([pointer]));
  return make('span', { class: 'measure' }, button, unit);
}

/** A button that opens all the figures a sentence speaks of. */
export function opener(pointers) {
  const found = pointers.filter((pointer) => steps.has(pointer));
  if (found.length === 0) return null;
  const button = make('button', {
    type: 'button', class: 'how', 'data-figures': found.join(' '), 'aria-haspopup': 'dialog',
  }, 'how');
  button.addEventListener('click', () => open(found));
  return button;
}

function open(pointers) {
  byId('opened').querySelector('.body').replaceChildren(...pointers.map((pointer) => {
    const { step, opens } = steps.get(pointer);
    return make('section', {},
      make('h3', {}, `${lineName(pointer)}${step.part}: ${step.quantity}`),
      make('p', { class: 'formula' }, make('code', {}, step.formula)),
      inputs(step),
      make('p', {}, make('b', {}, `= ${step.value} ${step.unit}`), converted(opens)),
      make('p', {}, `Source: ${step.source}`),
      make('p', {}, `Mark ${step.mark}: ${marks[step.mark] ?? ''}.`));
  }));
  byId('opened').showModal();
}

const inputs = (step) => step.inputs.length === 0 ? null : make('table', {},
  make('tbody', {}, step.inputs.map(({ symbol, value, unit }) => make('tr', {},
    make('th', { scope: 'row' }, symbol), make('td', {}, `${value} ${unit}`)))));

function converted({ pointer, times, plus }) {
  const value = valueAt(pointer);
  return times === undefined && plus === undefined
    ? ''
    : `, × ${times ?? 1}${plus ? ` + ${plus}` : ''} = ${value} as answered in US units`;
}

const valueAt = (pointer) =>
  pointer.slice(1).split('/').reduce((from, name) => from?.[name], answered);

function lineName(pointer) {
  const index = /^\/lines\/(\d+)\//.exec(pointer)?.[1];
  return index === undefined ? '' : `${answered.lines[index].name}, `;
}
