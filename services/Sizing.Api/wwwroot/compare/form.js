// The form of the comparison: makes its fields, fills them from a request, reads them back.

import { byId, make } from '/desk/dom.js';
import { groups, optionFields, rivalFields } from './fields.js';

let serial = 0;
let products = [];

const lists = {
  options: { word: 'Option', fields: () => optionFields(products) },
  rivals: { word: 'Quote', fields: () => rivalFields },
};

export function makeForm(catalogue) {
  products = catalogue;
  for (const [group, fields] of Object.entries(groups)) {
    byId(group).append(...fields.map((field) => makeField(field, `/${group}/${field.name}`)));
  }
  byId('addOption').addEventListener('click', () => add('options', {}, true));
  byId('addRival').addEventListener('click', () => add('rivals', { kind: 'bubbleSheet' }, true));
  byId('asked').addEventListener('change', showFitting);
}

export function fillForm(request) {
  for (const [group, fields] of Object.entries(groups)) {
    for (const field of fields) {
      byPath(`/${group}/${field.name}`).value = shown(at(request[group], field.name));
    }
  }
  byPath('/plane/framing/material').value = request.plane?.framing?.material ?? 'wood';
  const basis = request.basis ?? 'ashrae';
  byId('asked').dataset.basis = basis;
  for (const name of Object.keys(lists)) {
    byId(name).replaceChildren();
    for (const line of request[name] ?? []) add(name, line, false);
  }
  showFitting();
}

/** The request, and which field each path came from. */
export function readForm() {
  const request = { basis: byId('asked').dataset.basis, options: [], rivals: [], working: true };
  const fields = new Map();
  for (const group of Object.keys(groups)) read(byId(group), `/${group}`, request, fields);
  for (const name of Object.keys(lists)) {
    [...byId(name).children].forEach((item, i) => {
      request[name].push({});
      read(item, `/${name}/${i}`, request, fields);
      readSpace(item, request[name][i]);
    });
    if (request[name].length === 0) delete request[name];
  }
  return { request, fields };
}

function read(home, path, request, fields) {
  for (const input of home.querySelectorAll('[data-name]')) {
    const pointer = `${path}/${input.dataset.name}`;
    fields.set(input.dataset.name === 'space' ? `${path}/airSpaces` : pointer, input);
    if (input.dataset.name.startsWith('airSpaces')) continue;
    const value = input.value.trim();
    if (value === '' || input.dataset.name === 'space' || input.closest('[hidden]')) continue;
    set(request, pointer, meant(input, value));
  }
}

function meant(input, value) {
  if ('flag' in input.dataset) return value === 'true';
  if ('number' in input.dataset && Number.isFinite(Number(value))) return Number(value);
  return value;
}

function readSpace(item, line) {
  const kind = item.querySelector('[data-name="space"]').value;
  if (kind === '') return;
  if (kind === 'none') {
    line.airSpaces = [];
    return;
  }
  const space = { kind };
  for (const name of ['side', 'thickness']) {
    const value = item.querySelector(`[data-name="airSpaces/0/${name}"]`).value.trim();
    if (value !== '') space[name] = value;
  }
  line.airSpaces = [space];
}

function add(name, line, focus) {
  const { word, fields } = lists[name];
  const number = byId(name).children.length + 1;
  const remove = make('button', { type: 'button' }, 'Remove');
  const item = make('div', { class: 'item', role: 'group', 'aria-label': `${word} ${number}` },
    make('div', { class: 'head' }, make('b', {}, `${word} ${number}`), remove),
    make('div', { class: 'row' }, fields().map((field) => makeField(field))));
  remove.addEventListener('click', () => {
    item.remove();
    byId('asked').dispatchEvent(new Event('input', { bubbles: true }));
    byId(name === 'options' ? 'addOption' : 'addRival').focus();
  });
  byId(name).append(item);
  for (const input of item.querySelectorAll('[data-name]')) {
    const value = at(line, input.dataset.name);
    if (value !== undefined || input.tagName === 'INPUT') input.value = shown(value);
  }
  const spaces = line.airSpaces;
  item.querySelector('[data-name="space"]').value =
    spaces === undefined ? '' : spaces.length === 0 ? 'none' : spaces[0].kind ?? '';
  showFitting();
  if (focus) {
    item.querySelector('[data-name]').focus();
    byId('asked').dispatchEvent(new Event('input', { bubbles: true }));
  }
}

function makeField({ name, label, options, placeholder, number, flag, inSpace, wide }, path) {
  const id = `f${++serial}`;
  const attributes = {
    id, 'data-name': path ? path.slice(path.indexOf('/', 1) + 1) : name, 'data-path': path,
    'data-number': number, 'data-flag': flag, placeholder,
    inputmode: number ? 'decimal' : null,
  };
  const input = options
    ? make('select', attributes, options.map(([value, text]) => make('option', { value }, text)))
    : make('input', attributes);
  return make('div', { class: wide ? 'field wide' : 'field', 'data-in-space': inSpace },
    make('label', { for: id }, label), input);
}

/** Hides what does not fit the choices made. */
function showFitting() {
  const wall = byPath('/plane/kind').value === 'wall';
  const steel = byPath('/plane/framing/material').value === 'steel';
  const hide = (path, hidden) => { byPath(path).closest('.field').hidden = hidden; };
  hide('/plane/slope', wall);
  hide('/plane/framing/system', !steel || wall);
  for (const name of ['width', 'spacing', 'depth']) hide(`/plane/framing/${name}`, steel);
  hide('/room/heatedTo', byPath('/room/heated').value === 'false');
  for (const item of document.querySelectorAll('.item')) {
    const kind = item.querySelector('[data-name="space"]').value;
    for (const field of item.querySelectorAll('[data-in-space]')) {
      field.hidden = ['', 'none', 'claddingRibs'].includes(kind);
    }
  }
}

const byPath = (path) => document.querySelector(`[data-path="${path}"]`);
const shown = (value) => value === undefined || value === null ? '' : String(value);
const at = (value, path) => path.split('/').reduce((from, name) => from?.[name], value);

function set(request, pointer, value) {
  const names = pointer.slice(1).split('/');
  let place = request;
  for (const name of names.slice(0, -1)) place = place[name] ??= {};
  place[names.at(-1)] = value;
}
