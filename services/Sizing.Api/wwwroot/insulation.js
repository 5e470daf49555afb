// Which plane is insulated with what: one row per plane, equal rows sent as one line.

import { byId, make, swatch } from './dom.js';
import { layouts } from './fields.js';

const usual = ['roof', 'sidewallA', 'sidewallB', 'endwall1', 'endwall2'];

const titles = new Map([
  ['roof', 'Roof'], ['roofA', 'Roof A'], ['roofB', 'Roof B'], ['sidewallA', 'Sidewall A'],
  ['sidewallB', 'Sidewall B'], ['endwall1', 'Endwall 1'], ['endwall2', 'Endwall 2'],
]);

let products = [];

export function setProducts(list) {
  products = list;
}

export function fillInsulation(lines) {
  const chosen = new Map();
  for (const line of lines) {
    for (const plane of line.planes ?? []) chosen.set(plane, line);
  }
  byId('insulation').replaceChildren();
  const named = [...chosen.keys()];
  const roofs = named.filter((plane) => plane === 'roofA' || plane === 'roofB');
  const first = roofs.length > 0 ? ['roofA', 'roofB', ...usual.slice(1)] : usual;
  for (const plane of new Set([...first, ...named])) addRow(plane, chosen.get(plane));
}

/** Rows for planes the answer knows and the form does not: a lean-to's, a partition. */
export function addPlanes(answer) {
  const known = new Set(rows().map((row) => row.dataset.plane));
  for (const { plane, title } of [...answer.planes, ...answer.uncovered]) {
    titles.set(plane, title);
    const isMainRoof = (plane === 'roofA' || plane === 'roofB' || plane === 'roof');
    if (!known.has(plane) && !(isMainRoof && (known.has('roof') || known.has('roofA')))) {
      addRow(plane, undefined);
    }
  }
}

/** What becomes of a plane's last strip when it covers very little. */
export function chooseLastStrip(plane, choice) {
  const row = rows().find((one) => one.dataset.plane === plane)
    ?? rows().find((one) => one.dataset.plane === 'roof');
  row.dataset.lastStrip = choice;
}

/** Rows of planes that are no longer there. */
export function dropPlanes(isThere) {
  for (const row of rows()) {
    if (!isThere(row.dataset.plane)) row.remove();
  }
}

export function readInsulation(request, fields) {
  const lines = new Map();
  for (const row of rows()) {
    const [product, width, thickness, layout, start] = partsOf(row);
    if (product.value === '') continue;
    const lastStrip = ['', 'best'].includes(valueOf(width)) ? undefined : row.dataset.lastStrip;
    const key = [...partsOf(row).map(valueOf), lastStrip].join('|');
    if (!lines.has(key)) {
      const index = request.insulation.length;
      const line = { planes: [], product: product.value };
      if (valueOf(width)) line.rollWidth = width.value;
      if (valueOf(thickness)) line.thickness = thickness.value;
      if (lastStrip) line.lastStrip = lastStrip;
      if (valueOf(start)) line.startHeight = start.value;
      if (valueOf(layout) && layout.value !== 'auto') line.roofLayout = layout.value;
      request.insulation.push(line);
      lines.set(key, { line, index });
      fields.set(`/insulation/${index}`, product);
      fields.set(`/insulation/${index}/rollWidth`, width);
      fields.set(`/insulation/${index}/roofLayout`, layout);
      fields.set(`/insulation/${index}/thickness`, thickness);
      fields.set(`/insulation/${index}/startHeight`, start);
    }
    const { line, index } = lines.get(key);
    fields.set(`/insulation/${index}/planes/${line.planes.length}`, product);
    line.planes.push(row.dataset.plane);
  }
  fields.set('/insulation', byId('insulation').querySelector('select'));
}

const rows = () => [...byId('insulation').querySelectorAll('.cover')];

/** The product's name as it fits a narrow list; the schedule shows it in full. */
const short = (title) => title.replace(/(Un)?faced glass-fibre /i, '').replace('Foil-faced b', 'B');

const partsOf = (row) => ['product', 'width', 'thickness', 'layout', 'start']
  .map((name) => row.querySelector(`[data-part="${name}"]`));

const valueOf = (input) => (input.closest('[hidden]') ? '' : input.value.trim());

export const kindOf = (plane) => (/roof/i.test(plane) ? 'roof'
  : /sidewall/i.test(plane) ? 'sidewall' : 'endwall');

function addRow(plane, line) {
  const title = titles.get(plane) ?? plane;
  const product = make('select', {
    id: `${plane}-product`, 'data-part': 'product', 'aria-label': `${title}: product`,
  }, make('option', { value: '' }, 'not insulated'),
  products.map(({ code, title: text }) => make('option', { value: code }, short(text))));
  product.value = line?.product ?? '';
  const width = make('select', {
    id: `${plane}-width`, 'data-part': 'width', 'aria-label': `${title}: roll width`,
  });
  const thickness = make('input', {
    id: `${plane}-thickness`, 'data-part': 'thickness', 'aria-label': `${title}: thickness`,
  });
  thickness.value = line?.thickness ?? '';
  const layout = make('select', {
    id: `${plane}-layout`, 'data-part': 'layout', class: 'extra', 'aria-label': `${title}: layout`,
  }, layouts.map(([value, text]) => make('option', { value }, text)));
  layout.value = line?.roofLayout ?? 'auto';
  const start = make('input', {
    id: `${plane}-start`, 'data-part': 'start', class: 'extra', placeholder: 'starts at the base',
    'aria-label': `${title}: start of the strips above their base`,
  });
  start.value = line?.startHeight ?? '';
  const row = make('div', { class: 'cover', 'data-plane': plane, role: 'group', 'aria-label': title },
    make('span', { class: 'plane' }, swatch(kindOf(plane)), title),
    product, make('span', { class: 'size' }, width, thickness), layout, start);
  if (line?.lastStrip) row.dataset.lastStrip = line.lastStrip;
  const settle = (wanted) => settleRow(row, plane, wanted);
  product.addEventListener('change', () => settle(width.value));
  settle(line?.rollWidth);
  byId('insulation').append(row);
}

/** Offers what the chosen product comes in. */
function settleRow(row, plane, wanted) {
  const [product, width, thickness, layout, start] = partsOf(row);
  const chosen = products.find(({ code }) => code === product.value);
  const rolls = chosen?.rolls ?? [];
  const isMetric = /\d\s*(m|mm|cm)\s*$/i.test(byId('width').value);
  const widths = rolls.filter((roll) => roll.metric === isMetric || roll.widthText === wanted)
    .map((roll) => roll.widthText);
  if (wanted && wanted !== 'best' && rolls.length > 0 && !widths.includes(wanted)) widths.push(wanted);
  width.replaceChildren(
    ...widths.map((text) => make('option', { value: text }, text)),
    make('option', { value: 'best' }, 'best'));
  width.value = wanted && (widths.includes(wanted) || wanted === 'best') ? wanted
    : widths.find((text) => text.startsWith('48') || text.startsWith('1200')) ?? widths[0] ?? 'best';
  width.hidden = rolls.length === 0;
  thickness.hidden = chosen?.kind !== 'sprayFoam';
  if (!thickness.hidden && thickness.value === '') thickness.value = `${chosen.thicknessIn.value} in`;
  layout.hidden = rolls.length === 0 || !/^roof/.test(plane);
  start.hidden = !chosen || kindOf(plane) === 'roof';
}
