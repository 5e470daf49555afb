// Shows one line of the answer to a comparison, every figure of it to be opened.

import { make, table } from '/desk/dom.js';
import { figure, opener, unitOf } from './figures.js';

export const outcomes = {
  supported: 'supported', summerOnlySystemValue: 'a summer-only system value',
  needsAirSpaceNotThere: 'needs an air space that is not there',
  notReachableByMaterial: 'not reachable by this material',
};
export const verdicts = {
  dry: 'dry', wetsAndDries: 'wets and dries', nearlyDries: 'dries but for a little',
  accumulates: 'accumulates',
};
export const codeVerdicts = {
  meets: 'within the row', misses: 'above the row',
  meetsIfRowIsRight: 'within, if the row is right',
  missesIfRowIsRight: 'above, if the row is right', mayBeExempt: 'may be exempt: ask',
  noRow: 'no row held',
};
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

export function section(line, index, { pictures, lines }) {
  const id = `line-${line.id}`;
  const home = `/lines/${index}`;
  const facts = [];
  const fact = (term, ...values) => facts.push(make('dt', {}, term), make('dd', {}, ...values));
  claim(line, home, fact);
  if (line.material) {
    fact('Material', 'R ', figure(`${home}/material/r`, 'R'), `: ${line.material.source} `,
      mark(line.material.mark));
  }
  if (line.tested) {
    fact('Tested', 'R ', figure(`${home}/tested/assemblyR`, 'R'), ', U ',
      figure(`${home}/tested/assemblyU`, 'U'), ', heat outwards ',
      figure(`${home}/tested/winterHeatFlowBtuPerHFt2`, 'flux'), ' in winter, ',
      figure(`${home}/tested/summerHeatFlowBtuPerHFt2`, 'flux'), ' in summer: ',
      `${line.tested.text} `, mark(line.tested.mark));
  }
  (line.dulled ?? []).forEach((dulled, i) => fact('Not clean and dry', dulled.text, ' ',
    opener(['emittance', 'winterR', 'summerR'].map((name) => `${home}/dulled/${i}/${name}`))));
  moisture(line, home, fact);
  money(line, home, lines, fact);
  for (const remark of line.remarks) fact('Note', remark);
  return make('section', { class: 'line', 'aria-labelledby': id },
    make('h2', { id, tabindex: '-1' }, line.name, ' ',
      make('small', {}, line.ours ? 'ours' : 'quoted')),
    line.winter ? seasons(line, home) : blankText(line),
    make('dl', {}, ...facts),
    drawing('Temperature and vapour through it', pictures.profiles, line.id),
    line.moisture ? coldestMonth(line, home) : null,
    line.moisture ? waterByMonth(line, home, pictures) : null,
    line.working ? allWorking(line) : null);
}

const mark = (text) => make('small', {}, `(${text})`);

const blankText = (line) => line.tested ? '' : make('p', { class: 'note' }, line.questions.length > 0
  ? `Left blank until it is said: ${line.questions.map(({ question }) => question).join(' ')}`
  : 'Left blank: no tested value is held for it.');

function claim(line, home, fact) {
  if (!line.claim) return;
  fact('The claim', tag(line.claim.outcome && outcomes[line.claim.outcome]), line.claim.text, ' ',
    opener(['materialMostR', 'systemWinterR', 'systemSummerR'].map((name) =>
      `${home}/claim/${name}`)));
  if (line.claim.systemWinterR !== undefined) {
    fact('As a system', 'R ', figure(`${home}/claim/systemWinterR`, 'R'),
      ' with heat flowing as in winter, R ', figure(`${home}/claim/systemSummerR`, 'R'),
      ' as in summer: material, stated air spaces and films at the rule’s rating conditions');
  }
  if (line.claim.notSaid.length > 0) fact('Not said', line.claim.notSaid.join('; '));
}

const tag = (text) => text ? make('span', { class: 'tag' }, text) : null;

/** Winter beside summer. */
function seasons(line, home) {
  const cells = (name, kind, has = () => true) => ['winter', 'summer'].map((season) =>
    make('td', { class: 'num' }, line[season] && has(line[season])
      ? figure(`${home}/${season}/${name}`, kind, false) : '–'));
  const row = (term, ...rest) => make('tr', {}, make('th', { scope: 'row' }, term), ...rest);
  const words = (of) => ['winter', 'summer'].map((season) =>
    make('td', { class: 'num' }, of(line[season])));
  const spaces = (line.winter.airSpaces ?? []).flatMap((_, i) => [
    row(`Air space ${i + 1}: R ${unitOf('R')}`, ...cells(`airSpaces/${i}/r`, 'R')),
    row(`its mean, ${unitOf('temp')}`, ...cells(`airSpaces/${i}/meanF`, 'temp')),
    row(`difference across it, ${unitOf('span')}`, ...cells(`airSpaces/${i}/differenceF`, 'span')),
    row('effective emittance', ...cells(`airSpaces/${i}/effectiveEmittance`, 'share')),
    row(`thickness, ${unitOf('inch')}`, ...cells(`airSpaces/${i}/thicknessIn`, 'inch')),
    row('radiant share in it, %', ...cells(`airSpaces/${i}/radiantSharePercent`, 'percent')),
  ]);
  const radiant = (name) => ['winter', 'summer'].map((season) => {
    const at = (line.radiant ?? []).findIndex((cut) => cut.season === season);
    return make('td', { class: 'num' }, at < 0 ? '–'
      : figure(`${home}/radiant/${at}/${name}`, 'percent', false));
  });
  const hasBright = (line.radiant ?? []).some((cut) => cut.radiantPercent !== undefined);
  return make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': 'Seasons' },
    make('table', { class: 'seasons' },
      make('thead', {}, make('tr', {}, ['', 'Winter', 'Summer'].map((head) =>
        make('th', { scope: 'col', class: head ? 'num' : null }, head)))),
      make('tbody', {},
        row(`Assembly R ${unitOf('R')}`, ...cells('assemblyR', 'R')),
        row(`U-factor ${unitOf('U')}`, ...cells('assemblyU', 'U')),
        row(`Heat outwards, ${unitOf('flux')}`, ...cells('heatFlowBtuPerHFt2', 'flux')),
        row(`Room face, ${unitOf('temp')}`, ...cells('roomFaceF', 'temp')),
        row('Radiant share at the face, %', ...cells('roomFaceRadiantSharePercent', 'percent')),
        row('Heat flows', ...words(({ direction }) => direction)),
        row('Found by', ...words(({ method }) => method)),
        ...spaces,
        ...hasBright
          ? [row('Radiant exchange cut by its bright face, %', ...radiant('radiantPercent'))] : [],
        ...line.radiant
          ? [row('All heat cut by bright faces, %', ...radiant('totalPercent'))] : [])));
}

function moisture(line, home, fact) {
  if (line.drip) {
    const { worstMonth, worstFaceRhPercent } = line.drip;
    fact('Room face', line.drip.text, ' ', opener([
      `${home}/drip/dripsAboveRhPercent`, `${home}/drip/clearNightDripsAboveRhPercent`,
    ]), ...worstFaceRhPercent === undefined ? [] : [
      ` Dampest in an average ${months[worstMonth - 1]}: `,
      figure(`${home}/drip/worstFaceRhPercent`, 'percent'), ' at the face.',
    ]);
  }
  if (!line.moisture) return;
  fact('Water inside', tag(verdicts[line.moisture.verdict]), ' ', line.moisture.text, ' ',
    opener(['peakGPerM2', 'carriedOverGPerM2', 'underSky/peakGPerM2',
      'underSky/carriedOverGPerM2'].map((name) => `${home}/moisture/${name}`)),
    ...line.moisture.wetsInsideAboveRhPercent === undefined ? [] : [
      ` At steady winter design it would wet ${line.moisture.wetsInsideAt} from `,
      figure(`${home}/moisture/wetsInsideAboveRhPercent`, 'percent'), ' in the room.',
    ],
    line.moisture.retarderClass && line.moisture.retarderClass !== 'None'
      ? ` Facing of retarder class ${line.moisture.retarderClass}.` : '');
  line.moisture.cures.forEach((cure, i) => {
    fact(cure.cures ? 'Would cure it' : 'Would help', cure.text, ' ',
      opener(['peakGPerM2', 'carriedOverGPerM2', 'perm', 'roomRhPercent'].map((name) =>
        `${home}/moisture/cures/${i}/${name}`)));
  });
}

function money(line, home, lines, fact) {
  if (line.code) {
    fact('Code', line.code.text, ...line.code.limitU === undefined ? [] : [
      ' U at most ', figure(`${home}/code/limitU`, 'U'), ' ', mark(line.code.rowMark),
      ', in hand (negative: exceeded) ',
      figure(`${home}/code/marginU`, 'U'), '.',
    ]);
    for (const note of line.code.notes) fact('Code note', note);
  }
  if (line.price) {
    fact('Price', figure(`${home}/price/perFt2`, 'price'),
      line.price.from === 'list' ? ' by the price list' : ' as typed');
  }
  const { energy } = line;
  if (!energy) return;
  const at = (name) => `${home}/energy/${name}`;
  if (energy.fuelUnits !== undefined) {
    fact('This plane, a year', figure(at('heatKWh'), 'money'), ' kWh, ',
      figure(at('fuelUnits'), 'money'), ` ${energy.fuelUnit}`,
      ...energy.cost === undefined ? [] : [', costing ', figure(at('cost'), 'money')], '.');
  }
  if (energy.buildingLossBtuPerHF !== undefined) {
    fact('The building', 'Loses ', figure(at('buildingLossBtuPerHF'), 'loss'),
      ...energy.buildingDesignLoadBtuPerH === undefined ? [] : [
        ', needs ', figure(at('buildingDesignLoadBtuPerH'), 'power'), ' at winter design'],
      ...energy.buildingFuelUnits === undefined ? [] : [
        ', burns ', figure(at('buildingFuelUnits'), 'money'), ` ${energy.fuelUnit} a year`],
      ...energy.buildingCost === undefined ? [] : [
        ', costing ', figure(at('buildingCost'), 'money')], '.');
  }
  energy.paybacks.forEach((payback, i) => {
    const other = lines.find(({ id }) => id === payback.against).name;
    fact('Payback', `Against ${other}: costs `, figure(at(`paybacks/${i}/extraCost`), 'money'),
      ' more, saves ', figure(at(`paybacks/${i}/yearlySaving`), 'money'), ' a year. ',
      payback.text, ' ', opener([at(`paybacks/${i}/years`)]));
  });
}

/** Place by place through the assembly, where the vapour meets its saturation. */
function coldestMonth(line, home) {
  const { month, interfaces } = line.moisture.coldest;
  const at = `${home}/moisture/coldest`;
  const rows = interfaces.map(({ place, isFrost }, i) => make('tr', {},
    make('th', { scope: 'row' }, place),
    ...[['temperatureF', 'temp'], ['saturationPa', 'pa'], ['vapourPa', 'pa'], ['dewPointF', 'temp']]
      .map(([name, kind]) => make('td', { class: 'num' },
        figure(`${at}/interfaces/${i}/${name}`, kind, false))),
    make('td', {}, isFrost ? 'frost' : '')));
  const heads = ['Place', unitOf('temp'), 'Saturation Pa', 'Vapour Pa', `Dew point ${unitOf('temp')}`,
    ''];
  return make('details', {},
    make('summary', {}, `Place by place in an average ${months[month - 1]}`),
    make('p', {}, 'Condenses ', figure(`${at}/condensesGPerM2Day`, 'rate'),
      ' in a steady state, before anything dries.'),
    make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': 'Place by place' },
      make('table', {},
        make('thead', {}, make('tr', {}, heads.map((head) => make('th', { scope: 'col' }, head)))),
        make('tbody', {}, rows))));
}

function waterByMonth(line, home, pictures) {
  const rows = line.moisture.months.map((month, i) => make('tr', {},
    make('th', { scope: 'row' }, months[month.month - 1]),
    ...[['outdoorsF', 'temp'], ['roomF', 'temp'], ['roomRhPercent', 'percent'],
      ['roomFaceRhPercent', 'percent'], ['changeGPerM2', 'water'], ['heldGPerM2', 'water']]
      .map(([name, kind]) => make('td', { class: 'num' },
        figure(`${home}/moisture/months/${i}/${name}`, kind, false)))));
  const heads = ['Month', `Outdoors ${unitOf('temp')}`, `Room ${unitOf('temp')}`, 'Room air %',
    'At the face %', 'Condensed g/m²', 'Held g/m²'];
  const found = pictures.months.find((picture) => picture.line === line.id);
  const chart = make('div', { class: 'picture' });
  picture(chart, found.svg);
  return make('details', {}, make('summary', {}, 'Water month by month'), chart,
    make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': 'Water by month' },
      make('table', {},
        make('thead', {}, make('tr', {}, heads.map((head) => make('th', { scope: 'col' }, head)))),
        make('tbody', {}, rows))));
}

function drawing(title, list, id) {
  const found = list.find(({ line }) => line === id);
  if (!found) return null;
  const home = make('div', { class: 'picture' });
  picture(home, found.svg);
  return make('details', {}, make('summary', {}, title), home);
}

function allWorking(line) {
  const parts = [...new Set(line.working.map(({ part }) => part))];
  return make('details', { class: 'working' }, make('summary', {}, 'All the working'),
    ...parts.map((part) => {
      const steps = line.working.filter((step) => step.part === part);
      return make('details', { class: 'working' },
        make('summary', {}, `${part}, ${steps.length} ${steps.length === 1 ? 'step' : 'steps'}`),
        table(`${line.name}, ${part}: every step in the order it is reckoned`, [
          'Quantity', 'Formula', 'Inputs', { text: 'Value', num: true }, 'Source', 'Mark',
        ], steps.map((step) => [
          step.quantity, make('code', {}, step.formula),
          step.inputs.map(({ symbol, value, unit }) => `${symbol} = ${value} ${unit}`).join(', '),
          { text: `${step.value} ${step.unit}`, num: true }, step.source, step.mark,
        ])));
    }));
}

/** Our own service's drawing, parsed as SVG and not as markup of the page. */
export function picture(home, svg) {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
  home.replaceChildren(document.importNode(parsed.documentElement, true));
}
