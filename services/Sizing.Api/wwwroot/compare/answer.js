// Shows what all lines share in the answer to a comparison.

import { byId, make, shown, table } from '/desk/dom.js';
import { figure, isMetric, opener, readWorking, unitOf } from './figures.js';
import { codeVerdicts, outcomes, picture, section, verdicts } from './line.js';

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const blank = '–';

export function showAnswer(answer, fields, metric) {
  readWorking(answer, metric);
  picture(byId('side'), answer.pictures.sideBySide);
  byId('table').replaceChildren(overview(answer));
  byId('basis').replaceChildren(...basis(answer));
  byId('place').textContent = placeText(answer.place);
  byId('said').replaceChildren(...answer.conclusions.map(({ id, text, figures }) =>
    make('li', { class: id.includes('rival') ? 'rival' : null }, text, ' ', opener(figures))));
  showQuestions(answer, fields);
  showAir(answer.roomAir);
  byId('each').replaceChildren(...answer.lines.map((line, i) => section(line, i, answer)));
  byId('assumed').replaceChildren(answer.assumptions.length === 0
    ? make('p', { class: 'note' }, 'Nothing: every value came from you or from the tables.')
    : table('Defaults, each replaceable', ['What', { text: 'Value', num: true }, 'Source', 'Mark'],
      answer.assumptions.map(({ text, value, unit, source, mark }) => [
        text, { text: assumed(value, unit), num: true }, source, mark,
      ])));
  byId('prices').hidden = !answer.prices;
  if (answer.prices) {
    byId('prices').textContent = `Prices nobody typed are from the list ${answer.prices.id}, `
      + `version ${answer.prices.version}, in ${answer.prices.currency}. `
      + (answer.prices.note ?? '');
  }
  byId('rule').replaceChildren(
    make('p', { class: 'note' }, answer.labelRule.scope),
    table('Sections that bear on a claimed R', ['Section', 'What it asks', 'Mark'],
      answer.labelRule.sections.map(({ section: name, text, mark }) => [name, text, mark])));
  byId('cautions').replaceChildren(...answer.cautions.map(({ text, basis: from }) =>
    make('div', {}, make('dt', {}, text), make('dd', {}, make('small', {}, from)))));
}

const assumed = (value, unit) => isMetric() && unit === '°F'
  ? `${shown((value - 32) / 1.8, 1)} °C`
  : `${shown(value, value < 1 ? 3 : value % 1 ? 1 : 0)} ${unit}`;

function basis({ basis: { title }, plane, conditions }) {
  const at = (name, kind) => figure(`/conditions/${name}`, kind);
  return [
    `Reckoned by ${title}. Heat flows ${plane.winterDirection} in winter, `
      + `${plane.summerDirection} in summer. Winter `, at('winterRoomF', 'temp'), ' inside, ',
    at('winterOutdoorsF', 'temp'), ' outside; summer ', at('summerRoomF', 'temp'), ' inside, ',
    at('summerOutdoorsF', 'temp'), ' air and ', at('summerSolAirF', 'temp'),
    ' in the sun outside.',
    ...plane.framingFraction === undefined ? []
      : [' Members cover ', figure('/plane/framingFraction', 'share'), ' of the plane.'],
    ...conditions.heatingDegreeDaysF === undefined ? []
      : [' Degree days ', at('heatingDegreeDaysF', 'days'), '.'],
    make('span', { class: 'onscreen' }, ' Press a figure to see where it comes from.'),
  ];
}

function placeText(place) {
  if (!place) return '';
  const zone = place.zone ? `Zone ${place.zone} (${place.zoneEdition}).` : 'Zone not settled.';
  const notes = (place.notes ?? []).map((note) => ` ${note}`).join('');
  return (place.station
    ? `${zone} ${place.station}, ${shown(place.stationDistanceKm ?? 0)} km away.`
    : zone) + notes;
}

function overview(answer) {
  // A narrow screen sets each line as a card: there the heads stand beside the cells.
  const heads = ['Line', 'The claim', 'Material R', 'Winter R', 'Summer R', 'Moisture', 'Code',
    `Price ${unitOf('price')}; fuel a year`];
  const rows = answer.lines.map((line, i) => {
    const home = `/lines/${i}`;
    const of = (pointer, kind) => figure(home + pointer, kind, false);
    const season = (name) => of(`/${line.tested ? 'tested' : name}/assemblyR`, 'R');
    const cells = [
      [claimed(line)], [of('/material/r', 'R'), 'num'], [season('winter'), 'num'],
      [season('summer'), 'num'],
      [both([`face ${dripWord(line)}`],
        [`inside ${line.moisture ? verdicts[line.moisture.verdict] : blank}`])],
      [line.code ? codeVerdicts[line.code.verdict] : blank],
      [both([of('/price/perFt2', 'price')], [of('/energy/cost', 'money')]), 'num'],
    ];
    return make('tr', {},
      make('th', { scope: 'row' }, make('a', { href: `#line-${line.id}` }, line.name)),
      cells.map(([content, kind], at) =>
        make('td', { class: kind, 'data-head': heads[at + 1] }, content)));
  });
  const caption = isMetric()
    ? 'R in m²·K/W; – where something was not said'
    : 'R in h·ft²·°F/Btu; – where something was not said';
  return make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': caption },
    make('table', {}, make('caption', {}, caption),
      make('thead', {}, make('tr', {}, heads.map((head) => make('th', { scope: 'col' }, head)))),
      make('tbody', {}, rows)));
}

const both = (...lines) => make('span', { class: 'both' }, lines.map((line) =>
  make('span', {}, line)));

function claimed({ claim }) {
  // A claim stands as it was made; metric readers get its RSI beside it.
  const rsi = isMetric() ? ` (RSI ${shown(claim?.claimedR / 5.678263337, 2)})` : '';
  const said = [claim?.claimedR ? `R-${claim.claimedR}${rsi}` : null,
    claim?.outcome ? outcomes[claim.outcome] : null].filter(Boolean);
  return said.join(': ') || blank;
}

function dripWord({ drip }) {
  if (drip?.worstFaceRhPercent === undefined) return blank;
  if (drip.dripsAtDesign || drip.worstFaceRhPercent >= 100) return 'drips';
  return drip.worstFaceRhPercent >= 80 ? 'mould risk' : 'stays dry';
}

function showQuestions(answer, fields) {
  const questions = [...answer.lines.flatMap((line) => line.questions), ...answer.questions];
  byId('questions').hidden = questions.length === 0;
  byId('questions').querySelector('ul').replaceChildren(...questions.map((question) => {
    const field = fields.get(question.pointer) ?? [...fields].find(([path]) =>
      path.startsWith(question.pointer + '/'))?.[1];
    const go = field && make('button', { type: 'button' }, 'Answer');
    go?.addEventListener('click', () => {
      for (let fold = field.closest('details'); fold;
        fold = fold.parentElement.closest('details')) fold.open = true;
      field.focus();
    });
    return make('li', {}, make('span', { class: 'ask' }, question.question, go ?? ''));
  }));
}

/** The room's air, month by month, with its dew or frost point. */
function showAir(air) {
  byId('air').hidden = !air;
  if (!air) return;
  const cell = (pointer, kind) => make('td', { class: 'num' }, figure(pointer, kind, false));
  const rows = (air.months ?? []).map((month, i) => make('tr', {},
    make('th', { scope: 'row' }, months[month.month - 1]),
    ...[['outdoorsF', 'temp'], ['roomF', 'temp'], ['vapourPa', 'pa'], ['rhPercent', 'percent'],
      ['dewPointF', 'temp']].map(([name, kind]) => cell(`/roomAir/months/${i}/${name}`, kind)),
    make('td', {}, month.isFrost ? 'frost' : '')));
  const heads = ['Month', `Outdoors ${unitOf('temp')}`, `Room ${unitOf('temp')}`, 'Vapour Pa',
    'Humidity %', `Dew point ${unitOf('temp')}`, ''];
  byId('air').querySelector('.body').replaceChildren(
    make('p', {}, air.text, ' ', opener(['rhPercent', 'vapourPa', 'dewPointF'].map((name) =>
      `/roomAir/atDesign/${name}`))),
    make('p', {}, 'More vapour than outdoors when it freezes there: ',
      figure('/roomAir/coldExcessPa', 'pa'), ' by the use',
      ...air.burnerExcessPa === undefined ? ['.'] : [
        ' and ', figure('/roomAir/burnerExcessPa', 'pa'), ' by the heater without a flue.',
      ]),
    rows.length === 0 ? '' : make('details', {}, make('summary', {}, 'Month by month'),
      make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': 'Room air' },
        make('table', {},
          make('thead', {}, make('tr', {}, heads.map((head) => make('th', { scope: 'col' }, head)))),
          make('tbody', {}, rows)))));
}
