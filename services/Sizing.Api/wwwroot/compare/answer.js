// Shows the answer to a comparison.

import { byId, make, shown, table } from '/desk/dom.js';

const outcomes = {
  supported: 'supported', summerOnlySystemValue: 'a summer-only system value',
  needsAirSpaceNotThere: 'needs an air space that is not there',
  notReachableByMaterial: 'not reachable by this material',
};
const verdicts = {
  dry: 'dry', wetsAndDries: 'wets and dries', nearlyDries: 'dries but for a little',
  accumulates: 'accumulates',
};
const codeVerdicts = {
  meets: 'within the row', misses: 'above the row', meetsIfRowIsRight: 'within, if the row is right',
  missesIfRowIsRight: 'above, if the row is right', mayBeExempt: 'may be exempt: ask', noRow: 'no row held',
};
const blank = '–';

export function showAnswer(answer, fields) {
  picture(byId('side'), answer.pictures.sideBySide);
  byId('table').replaceChildren(overview(answer));
  byId('basis').textContent = `Basis: ${answer.basis.title}. Heat flows `
    + `${answer.plane.winterDirection} in winter, ${answer.plane.summerDirection} in summer. `
    + `Winter ${shown(answer.conditions.winterRoomF)} °F inside, `
    + `${shown(answer.conditions.winterOutdoorsF)} °F outside; summer `
    + `${shown(answer.conditions.summerRoomF)} °F inside, sol-air `
    + `${shown(answer.conditions.summerSolAirF)} °F outside.`;
  byId('place').textContent = placeText(answer.place);
  byId('said').replaceChildren(...answer.conclusions.map(({ id, text }) =>
    make('li', { class: id.includes('rival') ? 'rival' : null }, text)));
  showQuestions(answer, fields);
  byId('lines').replaceChildren(...answer.lines.map((line) => section(line, answer)));
  byId('assumed').replaceChildren(answer.assumptions.length === 0
    ? make('p', { class: 'note' }, 'Nothing: every value came from you or from the tables.')
    : table('Defaults, each replaceable', ['What', { text: 'Value', num: true }, 'Mark'],
      answer.assumptions.map(({ text, value, unit, mark }) => [
        text, { text: `${value} ${unit}`, num: true }, mark,
      ])));
  byId('rule').replaceChildren(
    make('p', { class: 'note' }, answer.labelRule.scope),
    table('Sections that bear on a claimed R', ['Section', 'What it asks', 'Mark'],
      answer.labelRule.sections.map(({ section: name, text, mark }) => [name, text, mark])));
  byId('cautions').replaceChildren(...answer.cautions.map(({ text, basis }) =>
    make('div', {}, make('dt', {}, text), make('dd', {}, make('small', {}, basis)))));
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
  const rows = answer.lines.map((line) => [
    line.name,
    number(line.claim?.claimedR, 1), line.claim?.outcome ? outcomes[line.claim.outcome] : blank,
    number(line.material?.r, 1),
    number(line.winter?.assemblyR ?? line.tested?.assemblyR, 1),
    number(line.summer?.assemblyR ?? line.tested?.assemblyR, 1),
    line.moisture ? verdicts[line.moisture.verdict] : blank,
    line.code ? codeVerdicts[line.code.verdict] : blank,
    number(line.price?.perFt2, 2), number(line.energy?.cost, 0),
  ]);
  return table('R in h·ft²·°F/Btu; blank where something was not said', [
    'Line', { text: 'Claimed R', num: true }, 'The claim', { text: 'Material R', num: true },
    { text: 'Winter R', num: true }, { text: 'Summer R', num: true }, 'Moisture', 'Code',
    { text: 'Price per ft²', num: true }, { text: 'Fuel a year', num: true },
  ], rows);
}

function showQuestions(answer, fields) {
  const questions = [...answer.lines.flatMap((line) => line.questions), ...answer.questions];
  byId('questions').hidden = questions.length === 0;
  byId('questions').querySelector('ul').replaceChildren(...questions.map((question) => {
    const field = [...fields].findLast(([path]) => question.pointer.startsWith(path)
      || path.startsWith(question.pointer))?.[1];
    const go = field && make('button', { type: 'button' }, 'Answer');
    go?.addEventListener('click', () => {
      field.closest('details')?.setAttribute('open', '');
      field.focus();
    });
    return make('li', {}, make('span', { class: 'ask' }, question.question, go ?? ''));
  }));
}

function section(line, { pictures, lines }) {
  const id = `line-${line.id}`;
  const facts = [];
  const fact = (term, ...values) => facts.push(make('dt', {}, term), make('dd', {}, ...values));
  if (line.claim) {
    if (line.claim.outcome) {
      fact('The claim', make('span', { class: 'tag' }, outcomes[line.claim.outcome]), ' ',
        line.claim.text);
    } else fact('The claim', line.claim.text);
    if (line.claim.notSaid.length > 0) fact('Not said', line.claim.notSaid.join('; '));
  }
  if (line.material) {
    fact('Material', `R-${shown(line.material.r, 1)}: ${line.material.source} `
      + `(${line.material.mark})`);
  }
  for (const [season, heat] of [['Winter', line.winter], ['Summer', line.summer]]) {
    if (heat) fact(season, seasonText(heat));
  }
  if (line.tested) fact('Tested', `R-${shown(line.tested.assemblyR, 1)}, ${line.tested.text}`);
  for (const radiant of line.radiant ?? []) {
    if (radiant.radiantPercent) fact(`Radiant, ${radiant.season}`, radiant.text);
  }
  for (const dulled of line.dulled ?? []) fact('Not clean and dry', dulled.text);
  if (line.drip) fact('Dripping', line.drip.text);
  if (line.moisture) fact('Water inside', line.moisture.text);
  for (const cure of line.moisture?.cures ?? []) {
    fact(cure.cures ? 'Would cure it' : 'Would help', cure.text);
  }
  if (line.code) fact('Code', line.code.text, make('small', {}, ` (${line.code.rowMark ?? blank})`));
  if (line.energy) fact('Heating', energyText(line.energy));
  for (const { text, against } of line.energy?.paybacks ?? []) {
    fact('Payback', `Against ${lines.find(({ id: other }) => other === against).name}: ${text}`);
  }
  for (const remark of line.remarks) fact('Note', remark);
  return make('section', { class: 'line', 'aria-labelledby': id },
    make('h2', { id }, line.name),
    make('dl', {}, ...facts),
    drawing('Temperature and vapour through it', pictures.profiles, line.id),
    drawing('Water month by month', pictures.months, line.id),
    line.working ? opened(line) : null);
}

function seasonText(heat) {
  const spaces = (heat.airSpaces ?? []).map((space) => `; air space R-${shown(space.r, 1)} at `
    + `${shown(space.meanF)} °F mean, ${shown(space.differenceF, 1)} °F across`
    + (space.outsideTable ? ', outside the table' : '')).join('');
  return `R-${shown(heat.assemblyR, 1)}, U ${shown(heat.assemblyU, 3)}, heat ${heat.direction}, `
    + `${shown(Math.abs(heat.heatFlowBtuPerHFt2), 1)} Btu/h·ft² `
    + `${heat.heatFlowBtuPerHFt2 < 0 ? 'in' : 'out'}, room face ${shown(heat.roomFaceF)} °F, by `
    + heat.method + spaces + '.';
}

function energyText(energy) {
  const cost = energy.cost === undefined ? '' : `, costing ${shown(energy.cost, 0)}`;
  const building = energy.buildingDesignLoadBtuPerH === undefined ? ''
    : ` The building needs ${shown(energy.buildingDesignLoadBtuPerH)} Btu/h at design.`;
  if (energy.fuelUnits === undefined) return building.trim();
  return `${shown(energy.fuelUnits, 0)} ${energy.fuelUnit} a year through this plane${cost}.`
    + building;
}

function drawing(title, list, id) {
  const found = list.find(({ line }) => line === id);
  if (!found) return null;
  const home = make('div', { class: 'picture' });
  picture(home, found.svg);
  return make('details', {}, make('summary', {}, title), home);
}

function opened(line) {
  return make('details', { class: 'working' }, make('summary', {}, 'Show the working'),
    table(`Every number of ${line.name}`, [
      'Part', 'Quantity', 'Formula', 'Inputs', { text: 'Value', num: true }, 'Source', 'Mark',
    ], line.working.map((step) => [
      step.part, step.quantity, make('code', {}, step.formula),
      step.inputs.map(({ symbol, value, unit }) => `${symbol} = ${value} ${unit}`).join(', '),
      { text: `${step.value} ${step.unit}`, num: true }, step.source, step.mark,
    ])));
}

/** Our own service's drawing, parsed as SVG and not as markup of the page. */
function picture(home, svg) {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
  home.replaceChildren(document.importNode(parsed.documentElement, true));
}

const number = (value, decimals) => value === undefined || value === null
  ? { text: blank, num: true }
  : { text: shown(value, decimals), num: true };
