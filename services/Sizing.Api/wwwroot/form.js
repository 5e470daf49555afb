// The form: makes its changing parts, fills them from a request, and reads them back into one.
// Every field knows the path of its member in the request; a mistake finds its field by that path.

import { byId, make } from './dom.js';
import {
  basisFields, datums, forms, leanToFields, moreFields, openingFields, panelFields, pointFields,
  practiceFields, roofFields, roofStarts, widthBases,
} from './fields.js';
import { fillInsulation, readInsulation } from './insulation.js';

let serial = 0;

/** How a field's text goes over the wire when it is no text there. */
const typed = { flag: (value) => value === 'true', number: Number };

const lists = {
  openings: { path: '/building/openings', fields: openingFields, word: 'Opening' },
  leanTos: { path: '/building/leanTos', fields: leanToFields, word: 'Lean-to' },
  panels: {
    path: '/building/roof/translucentPanels', fields: panelFields, word: 'Translucent panel',
  },
  points: { path: '/building/roof/points', fields: pointFields, word: 'Corner' },
};

export function makeForm() {
  setOptions(byId('form'), forms);
  setOptions(byId('widthBasis'), widthBases);
  setOptions(byId('eaveHeightDatum'), datums);
  addFields(byId('basisFields'), basisFields, '/building', {});
  addFields(byId('practiceFields'), practiceFields, '/practice', {});
  addFields(byId('moreFields'), moreFields, '/building', {});
  byId('addPanel').addEventListener('click', () => addItem('panels', {
    fromStart: '10 ft', width: '3 ft',
  }, true));
  byId('addOpening').addEventListener('click', () => addItem('openings', {
    wall: 'sidewallA', kind: 'walkDoor', width: '3 ft', height: '6 ft 8 in', fromStart: '6 ft',
  }, true));
  byId('addLeanTo').addEventListener('click', () => addItem('leanTos', {
    side: byId('leanTos').children.length === 0 ? 'A' : 'B', width: '12 ft', slope: '2:12',
  }, true));
  byId('form').addEventListener('change', () => {
    showRoof(byId('form').value, { ...roofStarts[byId('form').value], ...kept() });
  });
  byId('building').addEventListener('change', showConditional);
}

/** Shows a request in the form. */
export function fillForm(request) {
  const building = request.building ?? {};
  for (const name of ['name', 'width', 'length', 'eaveHeight']) {
    byId(name).value = building[name] ?? '';
  }
  byId('widthBasis').value = building.widthBasis ?? 'outsideOfGirts';
  byId('eaveHeightDatum').value = building.eaveHeightDatum ?? 'stripBase';
  fillFields(byId('basisFields'), '/building', building);
  fillFields(byId('practiceFields'), '/practice', request.practice ?? {});
  fillFields(byId('moreFields'), '/building', building);
  fillList('panels', building.roof?.translucentPanels ?? []);
  byId('form').value = building.roof?.form ?? 'gable';
  showRoof(byId('form').value, building.roof ?? {});
  fillList('leanTos', building.leanTos ?? []);
  fillList('openings', building.openings ?? []);
  fillInsulation(request.insulation ?? []);
  showConditional();
}

/** Reads the form: the request, and which field each path came from. */
export function readForm() {
  const request = { building: { roof: {} }, insulation: [] };
  const fields = new Map();
  for (const input of byId('building').querySelectorAll('[data-path], [data-member]')) {
    if (input.closest('[hidden]')) continue;
    const path = pathOf(input);
    fields.set(path, input);
    const value = input.value.trim();
    if (value !== '') setAt(request, path, typed[input.dataset.type]?.(value) ?? value);
  }
  readInsulation(request, fields);
  return { request, fields };
}

/** Shows each mistake at its field; answers those that have none. */
export function showMistakes(violations, fields) {
  clearMistakes();
  const homeless = [];
  for (const violation of violations) {
    const input = fieldFor(violation.pointer, fields);
    if (!input) {
      homeless.push(violation);
      continue;
    }
    const id = `${input.id}-mistake`;
    let note = byId(id);
    if (!note) {
      note = make('p', { id, class: 'mistake' });
      input.insertAdjacentElement('afterend', note);
    }
    note.append(note.textContent ? ' ' : '', violation.message);
    input.setAttribute('aria-invalid', 'true');
    input.setAttribute('aria-describedby', id);
  }
  return homeless;
}

export function clearMistakes() {
  for (const note of byId('building').querySelectorAll('.mistake')) note.remove();
  for (const input of byId('building').querySelectorAll('[aria-invalid]')) {
    input.removeAttribute('aria-invalid');
    input.removeAttribute('aria-describedby');
  }
}

/** The field of a pointer, or of the nearest member above it. */
export function fieldFor(pointer, fields) {
  for (let path = pointer; path !== ''; path = path.slice(0, path.lastIndexOf('/'))) {
    if (fields.has(path)) return fields.get(path);
  }
  return null;
}

/** What stands in a field that is left empty. */
export function showDefaults(assumptions) {
  for (const { id, value, unit } of assumptions) {
    const input = byId('practiceFields').querySelector(`[data-path="/practice/${id}"]`);
    if (input) input.placeholder = unit && !value.endsWith(unit) ? `${value} ${unit}` : value;
  }
}

function showRoof(form, values) {
  const home = byId('roofFields');
  home.replaceChildren();
  addFields(home, roofFields[form], '/building/roof', values);
  if (form === 'profile') {
    home.append(
      make('div', { id: 'points', class: 'list wide' }),
      make('p', { class: 'wide' }, button('Add a corner', () => addItem('points', {}, true))));
    fillList('points', values.points ?? roofStarts.profile.points);
  }
  showConditional();
}

/** Values of the roof fields that are on show, so that a change of form keeps what it can. */
function kept() {
  const values = {};
  for (const input of byId('roofFields').querySelectorAll('[data-path]')) {
    if (input.value.trim() !== '') values[input.dataset.path.split('/').at(-1)] = input.value;
  }
  return values;
}

function fillList(name, items) {
  byId(name).replaceChildren();
  for (const values of items) addItem(name, values, false);
}

function addItem(name, values, focus) {
  const list = lists[name];
  const item = make('div', { class: 'item', role: 'group' });
  const title = make('b');
  const head = make('div', { class: 'head' }, title, button('Remove', () => {
    const next = item.nextElementSibling ?? item.previousElementSibling;
    item.remove();
    number(name);
    (next?.querySelector('input, select') ?? byId(name).parentElement.querySelector('button'))
      ?.focus();
    changed();
  }));
  const row = make('div', { class: 'row' });
  item.append(head, row);
  addFields(row, list.fields, null, values);
  byId(name).append(item);
  number(name);
  if (focus) {
    item.querySelector('input, select').focus();
    changed();
  }
}

function number(name) {
  [...byId(name).children].forEach((item, index) => {
    const title = `${lists[name].word} ${index + 1}`;
    item.setAttribute('aria-label', title);
    item.querySelector('.head b').textContent = title;
    item.querySelector('.head button').setAttribute('aria-label', `Remove ${title.toLowerCase()}`);
  });
}

function addFields(home, fields, base, values) {
  for (const field of fields) {
    const id = `f${++serial}`;
    const input = field.options
      ? make('select', { id }, field.options.map(([value, text]) => make('option', { value }, text)))
      : make('input', { id });
    if (base === null) input.dataset.member = field.name;
    else input.dataset.path = `${base}/${field.name}`;
    if (field.type) input.dataset.type = field.type;
    const value = valueAt(values, field.name) ?? field.start;
    if (value !== undefined) input.value = String(value);
    if (field.options && input.selectedIndex < 0) input.selectedIndex = 0;
    if (field.optional) input.placeholder = 'if any';
    const box = make('div', { class: 'field' }, make('label', { for: id }, field.label), input);
    if (field.when) box.dataset.when = JSON.stringify(field.when);
    home.append(box);
  }
}

function fillFields(home, base, values) {
  for (const input of home.querySelectorAll('[data-path]')) {
    input.value = String(valueAt(values, input.dataset.path.slice(base.length + 1)) ?? '');
  }
}

const valueAt = (values, name) => name.split('/').reduce((value, step) => value?.[step], values);

/** Hides fields that their neighbours' choices leave without a meaning. */
function showConditional() {
  for (const box of byId('building').querySelectorAll('[data-when]')) {
    box.hidden = Object.entries(JSON.parse(box.dataset.when)).some(([member, wanted]) => {
      const home = box.parentElement;
      const other = home.querySelector(`[data-path$="/${member}"]`) ?? byId(member);
      return ![wanted].flat().includes(other?.value);
    });
  }
}

function pathOf(input) {
  if (input.dataset.path) return input.dataset.path;
  const item = input.closest('.item');
  const list = item.parentElement;
  return `${lists[list.id].path}/${[...list.children].indexOf(item)}/${input.dataset.member}`;
}

function setAt(target, path, value) {
  const steps = path.split('/').slice(1);
  steps.forEach((step, index) => {
    const next = steps[index + 1];
    if (next === undefined) {
      target[step] = value;
    } else {
      target[step] ??= /^\d+$/.test(next) ? [] : {};
      target = target[step];
    }
  });
}

function setOptions(select, options) {
  select.replaceChildren(...options.map(([value, text]) => make('option', { value }, text)));
}

function button(text, onClick) {
  const element = make('button', { type: 'button' }, text);
  element.addEventListener('click', onClick);
  return element;
}

const changed = () => byId('building').dispatchEvent(new Event('input', { bubbles: true }));
