// The form of the comparison: makes its fields, fills them from a request, reads them back. Every
// home (a group, a list, an item of a list) knows its name; a field's path is that of its homes.

import { byId, make } from '/desk/dom.js';
import { groups, lists } from './fields.js';

let serial = 0;
let known = {};

export function makeForm(products) {
  known = lists(products);
  byId('groups').append(...groups.map(makeGroup));
  byId('lines').append(makeList('options'));
  byId('quotes').append(makeList('rivals'));
  byId('asked').addEventListener('change', showFitting);
}

export function fillForm(request) {
  for (const home of byId('asked').querySelectorAll('[data-home]')) {
    if (home.dataset.list) home.querySelector('.list').replaceChildren();
  }
  for (const input of byId('asked').querySelectorAll('[data-name]')) {
    put(input, at(request, pathOf(input)));
  }
  byName('climate/place').value = ['postalCode', 'countyFips', 'stationWmo']
    .find((name) => request.climate?.[name] !== undefined)
    ?? (request.climate ? '' : 'postalCode');
  for (const list of ['options', 'rivals']) {
    for (const line of request[list] ?? []) addItem(listOf(list), line);
  }
  for (const part of request.building?.otherElements ?? []) {
    addItem(listOf('otherElements'), part);
  }
  showFitting();
  for (const fold of byId('asked').querySelectorAll('details')) {
    fold.open = [...fold.querySelectorAll('[data-name]')]
      .some((input) => input.value !== '' && !input.closest('[hidden]'));
  }
}

/** The request, and which field each path came from. */
export function readForm() {
  const request = {};
  const fields = new Map();
  for (const element of byId('asked').querySelectorAll('[data-name], [data-home="#"]')) {
    if (element.closest('[hidden]')) continue;
    const path = pathOf(element);
    if (element.dataset.home) {
      set(request, path, {});
      continue;
    }
    fields.set(path, element);
    const value = element.value.trim();
    if (value === '' || 'aside' in element.dataset) continue;
    if ('spaces' in element.dataset) {
      if (value === 'none') set(request, path, []);
    } else set(request, path, meant(element, value));
  }
  for (const list of ['options', 'rivals']) {
    fields.set(`/${list}`, listOf(list).querySelector(':scope > p > button'));
  }
  return { request: { ...request, working: true }, fields };
}

/** What the answer tells of prices and of the units in use, as hints in the empty fields. */
export function hint(answer, isMetric) {
  for (const input of byId('asked').querySelectorAll('[data-us]')) {
    input.placeholder = (isMetric && input.dataset.metric) || input.dataset.us;
  }
  [...listOf('options').querySelector('.list').children].forEach((item, i) => {
    const price = answer?.lines[i]?.price;
    item.querySelector('[data-price]').placeholder =
      price?.from === 'list' ? `${price.perFt2.toFixed(2)} by the list` : '';
  });
}

export const labelOf = (field) => field.labels?.[0]?.textContent ?? field.textContent;

function makeGroup({ path, title, folded, fields, more, lists: inner = [] }) {
  const rows = make('div', { class: 'rows wide' }, fields.map(makeField));
  const parts = [rows, fold(more), ...inner.map(makeList)];
  return make('fieldset', { 'data-home': path || null, id: `group-${path || 'how'}` },
    make('legend', {}, title),
    ...folded ? [make('details', { class: 'wide' }, make('summary', {}, folded), parts)] : parts,
    path === 'climate'
      ? make('p', { id: 'place', class: 'hint wide', role: 'status' }) : null);
}

const fold = (more) => more
  ? make('details', { class: 'wide more' }, make('summary', {}, more.title),
    make('div', { class: 'rows' }, more.fields.map(makeField)))
  : null;

function makeList(name) {
  const { word } = known[name];
  const button = make('button', { type: 'button' }, `Add ${article(word)} ${word.toLowerCase()}`);
  const home = make('div', { class: 'wide', 'data-home': name, 'data-list': name },
    make('div', { class: 'list' }), make('p', {}, button));
  button.addEventListener('click', () => {
    const item = addItem(home, name === 'rivals' ? { kind: 'bubbleSheet' } : {});
    item.querySelector('[data-name]').focus();
    changed();
  });
  return home;
}

function addItem(home, value) {
  const { word, fields, more, most } = known[home.dataset.list];
  const list = home.querySelector('.list');
  const remove = make('button', { type: 'button' }, 'Remove');
  const title = make('b', {});
  const item = make('div', { class: 'item', role: 'group', 'data-home': '#' },
    make('div', { class: 'head' }, title, remove),
    make('div', { class: 'row' }, fields.map(makeField)), fold(more));
  if (fields.some((field) => field.spaces)) item.append(makeList('airSpaces'));
  remove.addEventListener('click', () => {
    item.remove();
    number(list, word);
    home.querySelector(':scope > p > button').focus();
    changed();
  });
  list.append(item);
  number(list, word);
  for (const input of item.querySelectorAll('[data-name]')) {
    if ('spaces' in input.dataset) {
      input.value = value.airSpaces === undefined ? ''
        : value.airSpaces.length === 0 ? 'none' : 'stated';
    } else put(input, at(value, `/${input.dataset.name}`));
  }
  for (const space of value.airSpaces ?? []) addItem(item.querySelector('[data-list]'), space);
  home.querySelector(':scope > p').hidden = list.children.length >= most;
  showFitting();
  return item;
}

/** Counts the items anew, for eye and ear. */
function number(list, word) {
  [...list.children].forEach((item, i) => {
    item.setAttribute('aria-label', `${word} ${i + 1}`);
    item.querySelector('b').textContent = `${word} ${i + 1}`;
  });
  const add = list.parentElement.querySelector(':scope > p');
  add.hidden = list.children.length >= known[list.parentElement.dataset.list].most;
}

function makeField(field) {
  const id = `f${++serial}`;
  const [us, metric] = field.examples ?? [];
  const attributes = {
    id, 'data-name': field.name, 'data-number': field.number, 'data-flag': field.flag,
    'data-aside': field.aside, 'data-spaces': field.spaces, 'data-price': field.price,
    'data-us': us && `e.g. ${us}`, 'data-metric': metric && `e.g. ${metric}`,
    placeholder: us && `e.g. ${us}`, list: field.list,
    inputmode: field.number ? 'decimal' : null,
  };
  const input = field.options
    ? make('select', attributes,
      field.options.map(([value, text]) => make('option', { value }, text)))
    : make('input', attributes);
  return make('div', { class: field.wide ? 'field wide' : 'field' },
    make('label', { for: id }, field.label), input);
}

/** Hides what does not fit the choices made. */
function showFitting() {
  const wall = byName('plane/kind').value === 'wall';
  const steel = byName('plane/framing/material').value === 'steel';
  const hide = (name, hidden) => { byName(name).closest('.field').hidden = hidden; };
  hide('plane/slope', wall);
  hide('plane/framing/system', !steel || wall);
  for (const name of ['width', 'spacing', 'depth']) hide(`plane/framing/${name}`, steel);
  hide('room/heatedTo', byName('room/heated').value === 'false');
  const place = byName('climate/place').value;
  for (const name of ['postalCode', 'countyFips', 'stationWmo']) {
    hide(`climate/${name}`, name !== place);
  }
  const burns = byName('room/burner/fuel').value !== '';
  for (const name of ['input', 'volume', 'airChangesPerHour']) hide(`room/burner/${name}`, !burns);
  for (const choice of byId('asked').querySelectorAll('[data-spaces]')) {
    const home = choice.closest('[data-home]').querySelector('[data-list="airSpaces"]');
    const isStated = choice.value === 'stated';
    home.hidden = !isStated;
    if (isStated && home.querySelector('.list').children.length === 0) addItem(home, {});
  }
}

function pathOf(element) {
  const home = element.dataset.home === undefined
    ? element.closest('[data-home]')
    : element.parentElement.closest('[data-home]');
  const above = home ? pathOf(home) : '';
  const name = element.dataset.home === '#'
    ? [...element.parentElement.children].indexOf(element)
    : element.dataset.name ?? element.dataset.home;
  return `${above}/${name}`;
}

const listOf = (name) => byId('asked').querySelector(`[data-list="${name}"]`);
const article = (word) => (/^[AEIOU]/.test(word) ? 'an' : 'a');
const changed = () => byId('asked').dispatchEvent(new Event('input', { bubbles: true }));

/** A field of a group, by its path. */
function byName(path) {
  const [group, ...name] = path.split('/');
  return byId(`group-${group}`).querySelector(`[data-name="${name.join('/')}"]`);
}

function meant(input, value) {
  if (input.list) return numberOf(input.list, value);
  if ('flag' in input.dataset) return value === 'true';
  if ('number' in input.dataset && Number.isFinite(Number(value))) return Number(value);
  return value;
}

/** The number behind a name that only one of the list begins with; else what was typed. */
function numberOf(list, name) {
  const wanted = name.toLowerCase();
  const found = [...list.options].filter(({ label }) => label.toLowerCase().startsWith(wanted));
  return found.length === 1 ? found[0].value : name;
}

function put(input, value) {
  const text = value === undefined || value === null ? '' : String(value);
  if (input.tagName !== 'SELECT') input.value = text;
  else if ([...input.options].some((option) => option.value === text)) input.value = text;
  else input.selectedIndex = 0;
}

const at = (value, path) => path.slice(1).split('/').reduce((from, name) => from?.[name], value);

function set(request, path, value) {
  const names = path.slice(1).split('/');
  let place = request;
  names.slice(0, -1).forEach((name, i) => {
    place = place[name] ??= /^\d+$/.test(names[i + 1]) ? [] : {};
  });
  place[names.at(-1)] ??= value;
}
