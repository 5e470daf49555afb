// Shows a take-off: sums, schedule, heat, quantities, what was assumed, every piece, cautions.

import { byId, make, shown, swatch, table } from './dom.js';
import { amount, amountText, counted, inMetric, setUnits } from './units.js';

export function showAnswer(answer) {
  setUnits(answer.building.units);
  byId('summaryTitle').textContent = [answer.building.name, answer.building.summary]
    .filter(Boolean).join(' — ');
  showTotals(answer);
  showWarnings(answer);
  byId('schedule').replaceChildren(schedule(answer));
  byId('heat').replaceChildren(...heat(answer));
  showQuantities(answer);
  byId('assumptions').replaceChildren(assumptions(answer));
  byId('pieces').replaceChildren(...pieces(answer));
  byId('cautions').replaceChildren(...cautions(answer));
}

/** How one piece came about. */
export function showPiece(piece, answer) {
  const plane = answer.planes.find(({ plane: id }) => id === piece.plane);
  byId('piece').replaceChildren(
    make('strong', {}, `${piece.mark} · ${plane.title}, strip ${piece.strip}${roleOf(piece)}`),
    `: ${piece.cutText}, ${width(piece)} wide, ${amountText(piece.weightLb, 'lb', 1)}`, why(piece));
}

const lengthOf = (line) => (inMetric() ? `${shown(line.cutMm)} mm` : `${shown(line.cutIn, 0)} in`);

const width = (line) => (inMetric() ? `${shown(line.widthMm)} mm` : `${shown(line.widthIn)} in`);

const roleOf = ({ role }) => ({ header: ', above the opening', sill: ', below the opening' }[role]
  ?? '');

function showTotals({ totals }) {
  const entries = [
    ['Pieces', shown(totals.pieces)],
    ['Length cut', ...amount(totals.lengthFt, 'ft', 0, 1)],
    ['Blanket', ...amount(totals.grossFt2, 'ft²', 0, 1)],
    ['Covered', ...amount(totals.netFt2, 'ft²', 0, 1)],
    ['Blanket ÷ covered', shown(totals.grossToNet, 3)],
    ['Weight', ...amount(totals.weightLb, 'lb')],
  ];
  byId('totals').replaceChildren(...entries.map(([name, value, unit]) => make('div', {},
    make('dt', {}, name), make('dd', {}, value, unit ? make('small', {}, ` ${unit}`) : null))));
}

/** Warnings that another list on the page says better. */
const saidElsewhere = new Set(['thin-last-strip', 'unplaced-opening']);

function showWarnings({ warnings, possibleSavings, choices, planes }) {
  const lines = [
    ...warnings.filter(({ id }) => !saidElsewhere.has(id)).map(({ text }) => text),
    ...possibleSavings.map(({ text }) => text),
    ...Map.groupBy(choices, ({ plane }) => plane).values().map((group) => choiceOf(group, planes)),
  ];
  byId('warnings').hidden = lines.length === 0;
  byId('warnings').querySelector('ul').replaceChildren(...lines.map((line) => make('li', {}, line)));
}

/** A last strip that covers very little: what becomes of it is asked, not decided. */
function choiceOf(group, planes) {
  const { plane } = group[0];
  const { title } = planes.find(({ plane: id }) => id === plane);
  const select = make('select', {
    'aria-label': `Last strip of ${title}`, 'data-last-strip': plane,
  }, group.map(({ choice, text, grossFt2 }) => make('option', { value: choice },
    `${text} ${amountText(grossFt2, 'ft²', 0, 1)}`)));
  select.value = group.find(({ taken }) => taken)?.choice ?? group[0].choice;
  return select;
}

function schedule({ schedule: lines, planes }) {
  const body = planes.map((plane) => {
    const own = lines.filter((line) => line.plane === plane.plane);
    return make('tbody', { class: 'plane-rows' }, make('tr', {},
      make('th', { scope: 'rowgroup', colspan: 4 },
        make('span', { class: 'plane' }, swatch(plane.kind), plane.title),
        make('small', {}, ` ${plane.productTitle}`),
        plane.how ? make('small', { class: 'how' }, plane.how) : null),
    ), own.map((line) => make('tr', {},
      make('td', {}, line.strips, line.role === 'full' ? null : make('small', {}, ` ${line.role}`)),
      make('td', { class: 'num' }, width(line)),
      make('td', { class: 'num' }, line.cutText,
        inMetric() ? null : make('small', {}, ` ${lengthOf(line)}`)),
      make('td', { class: 'num' }, shown(line.count)))));
  });
  const heads = [['Strips'], ['Width', 'num'], ['Cut length', 'num'], ['Count', 'num']];
  const caption = 'Strips count from endwall 1 on roofs and sidewalls, from sidewall A on endwalls';
  return make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': caption },
    make('table', {}, make('caption', {}, caption),
      make('thead', {}, make('tr', {}, heads.map(([text, style]) => make('th', {
        scope: 'col', class: style,
      }, text)))), body));
}

function heat({ planes }) {
  const rows = planes.filter(({ thermal }) => thermal).map(({ title, kind, thermal }) => [
    make('span', { class: 'plane' }, swatch(kind), title),
    {
      text: inMetric() ? amount(thermal.nominalR, 'R', 1, 2)[0] : `R-${shown(thermal.nominalR, 1)}`,
      num: true,
    },
    season(thermal.winter), season(thermal.summer),
  ]);
  const basis = planes.find(({ thermal }) => thermal)?.thermal;
  if (!basis) return [make('p', { class: 'note' }, 'Nothing to sum up for these planes.')];
  return [
    table(inMetric()
      ? 'R in m²·K/W; U in W/(m²·K)'
      : 'R in h·ft²·°F/Btu; U in Btu/(h·ft²·°F)',
      ['Plane', { text: 'Product alone', num: true }, 'Winter: whole assembly',
        'Summer: whole assembly'], rows),
    make('p', { class: 'note' },
      'The product alone is rated before installation. The assembly counts the films of air on '
      + 'both faces and the framing that squeezes the blanket; it is what the building feels. '
      + `Computed by ${basis.basis}: ${basis.winter.method}.`),
  ];
}

const directions = {
  up: 'heat going up', up45: 'heat going up a steep slope', horizontal: 'heat going sideways',
  down45: 'heat coming down a steep slope', down: 'heat coming down',
};

const season = (line) => make('span', {}, `R ${amount(line.assemblyR, 'R', 1, 2)[0]} `, make(
  'small', {}, `U ${amount(line.assemblyU, 'U', 3, 2)[0]}, ${directions[line.direction]}`));

/** The list names things by code; people by title. */
const titleOf = (item, { accessories, planes }) => accessories.find(({ id }) => id === item)?.title
  ?? planes.find(({ product }) => product === item)?.productTitle ?? item;

function showQuantities(answer) {
  const { accessories, areaGoods, packing, price } = answer;
  const parts = [];
  if (accessories.length > 0) {
    parts.push(table('Fixing and sealing', [
      'Item', { text: 'Buy', num: true }, 'How it was counted',
    ], accessories.map((line) => [
      line.title, { text: counted(line.quantity, line.unit), num: true }, line.how,
    ])));
  }
  if (areaGoods.length > 0) {
    parts.push(table('By area', ['Item', { text: 'Buy', num: true }, 'How it was counted'],
      areaGoods.map((line) => [
        line.title, { text: counted(line.quantity, line.unit, 2), num: true }, line.how,
      ])));
  }
  if (packing) {
    parts.push(make('p', {}, `${counted(packing.bags.length, 'bags')} on `
      + `${counted(packing.pallets, 'pallets')}, ${amountText(packing.freightFt3, 'ft³', 0, 1)}, `
      + `about ${amountText(packing.trailerFt, 'ft', 1)} of trailer, `
      + `${amountText(packing.weightLb, 'lb')}. `, make('small', {}, packing.how)));
    parts.push(make('p', {}, packing.palletLoads.map(({ number, bags, weightLb }) =>
      `Pallet ${number}: ${bags.length === 1 ? `bag ${bags[0]}` : `bags ${bags[0]} to ${bags.at(-1)}`}, `
        + amountText(weightLb, 'lb'))
      .join('; ') + '.'));
  }
  if (price) {
    parts.push(table(`Price by list ${price.listId}, version ${price.listVersion}`,
      ['Item', { text: 'Quantity', num: true }, { text: 'Amount', num: true }],
      [...price.lines.map((line) => [
        titleOf(line.item, answer), { text: counted(line.quantity, line.unit, 1), num: true },
        { text: shown(line.amount, 2), num: true },
      ]), [make('strong', {}, 'Total'), '', { text: `${price.currency} ${shown(price.total, 2)}`, num: true }]]));
    if (price.note) parts.push(make('p', { class: 'note' }, price.note));
    if (price.notPriced.length > 0) {
      parts.push(make('p', { class: 'note' }, `Not in the list: ${price.notPriced.join(', ')}.`));
    }
  }
  byId('quantities').hidden = parts.length === 0;
  byId('quantities').querySelector('div').replaceChildren(...parts);
}

const marks = {
  P: 'published', C: 'common practice', M: 'from memory', D: 'derived', asked: 'as asked',
};

const assumptions = ({ assumptions: lines }) => make('details', { open: lines.length < 8 },
  make('summary', {}, `${lines.length} values the take-off used; change them under Shop practice`),
  table('Values used', ['What', { text: 'Value', num: true }, 'From'], lines.map((line) => [
    line.text,
    { text: line.unit && !line.value.endsWith(line.unit) ? `${line.value} ${line.unit}` : line.value, num: true },
    marks[line.mark] ?? line.mark,
  ])));

function pieces(answer) {
  return answer.planes.map((plane) => {
    const own = answer.pieces.filter((piece) => piece.plane === plane.plane);
    return own.length === 0 ? '' : make('details', {},
      make('summary', {}, `${plane.title}: ${counted(own.length, 'pieces')}`),
      alike(own).map((group) => make('div', {}, make('h3', {}, `${namesOf(group)}${roleOf(group[0])}: `
        + `${group[0].cutText} × ${width(group[0])}`), why(group[0]))));
  });
}

/** Pieces whose length came about in the same way, together. */
function alike(own) {
  const groups = Map.groupBy(own, (piece) => `${piece.role} ${piece.widthMm} `
    + piece.why.map((line) => line.text).join('|'));
  return [...groups.values()];
}

const namesOf = (group) => (group.length > 2 && group.every(
  ({ strip }, n) => strip === group[0].strip + n)
  ? `${group[0].mark} to ${group.at(-1).mark}` : group.map(({ mark }) => mark).join(', '));

const reached = new Set(['exact', 'roundUp']);

const why = (piece) => make('table', { class: 'why' }, make('tbody', {}, piece.why.map((line) => make(
  'tr', { class: reached.has(line.term) ? 'sum' : null },
  make('td', {}, line.text),
  make('td', { class: 'num' }, inMetric() ? `${shown(line.mm, 1)} mm` : `${shown(line.in, 3)} in`),
  make('td', {}, make('small', {}, marks[line.mark] ?? line.mark))))));

const cautions = ({ cautions: lines }) => [make('dl', { class: 'cautions' }, lines.map((line) => make(
  'div', {}, make('dt', {}, line.topic), make('dd', {}, line.text,
    make('small', {}, [line.basis, line.source].filter(Boolean).join(' · '))))))];
