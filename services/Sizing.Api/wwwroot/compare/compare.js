// The comparison page: what is entered is asked of POST /v1/comparisons, and shown.

import { byId, make } from '/desk/dom.js';
import { fillForm, hint, labelOf, makeForm, readForm } from './form.js';
import { showAnswer } from './answer.js';

const typingPauseMs = 300;
const empty = { plane: { kind: 'roof' } };

let waiting = 0;
let asking = new AbortController();

async function start() {
  const [catalogue, examples] = await Promise.all([
    getJson('/v1/products'), getJson('/compare/examples.json'),
  ]);
  makeForm(catalogue.products);
  namePlaces();
  const select = byId('example');
  select.append(...examples.map(({ id, title }) => make('option', { value: id }, title)),
    make('option', { value: '' }, 'nothing: an empty form'));
  const show = () => {
    const example = examples.find(({ id }) => id === select.value);
    fillForm(example?.request ?? empty);
    if (example) ask();
    else rest();
  };
  select.addEventListener('change', (event) => {
    event.stopPropagation();
    show();
  });
  for (const heard of ['input', 'change']) {
    byId('asked').addEventListener(heard, () => {
      clearTimeout(waiting);
      waiting = setTimeout(ask, typingPauseMs);
    });
  }
  byId('asked').addEventListener('submit', (event) => event.preventDefault());
  byId('print').addEventListener('click', () => window.print());
  byId('opened').addEventListener('click', (event) => {
    if (event.target === byId('opened')) byId('opened').close();
  });
  openOnPaper();
  show();
}

/** Counties and stations by name, for the fields that take their numbers. */
async function namePlaces() {
  const places = await getJson('/compare/places.json');
  for (const name of ['counties', 'stations']) {
    byId(name).replaceChildren(...places[name].map(([value, label]) =>
      make('option', { value, label: `${label} (${value})` })));
  }
}

/** Nothing was entered yet, so nothing is wrong yet. */
function rest() {
  asking.abort();
  clearMistakes();
  byId('mistakes').hidden = true;
  byId('answer').hidden = true;
  hint(null, false);
  tell('Enter the plane and a line to compare.');
  document.body.dataset.state = 'waiting';
}

async function ask() {
  asking.abort();
  asking = new AbortController();
  const { request, fields } = readForm();
  try {
    const answer = await fetch('/v1/comparisons', {
      method: 'POST', headers: { 'content-type': 'application/json' },
      body: JSON.stringify(request), signal: asking.signal,
    });
    const body = await answer.json();
    clearMistakes();
    byId('mistakes').hidden = answer.ok;
    byId('answer').classList.toggle('stale', !answer.ok);
    const isMetric = request.units === 'metric';
    hint(answer.ok ? body : null, isMetric);
    if (answer.ok) {
      byId('answer').hidden = false;
      showAnswer(body, fields, isMetric);
      tell(`${body.lines.length} ${body.lines.length === 1 ? 'line' : 'lines'} compared. `
        + 'Up to date.');
    } else {
      refuse(body, fields);
    }
    document.body.dataset.state = answer.ok ? 'answered' : 'refused';
  } catch (failure) {
    if (failure.name === 'AbortError') return;
    tell('The page cannot reach its service just now.');
    if (!(failure instanceof TypeError)) throw failure;
  }
}

function refuse(problem, fields) {
  byId('mistakesTitle').textContent = problem.title;
  const items = (problem.violations ?? []).map((violation) => {
    const field = fieldFor(violation.pointer, fields);
    if (field) mark(field, violation.message);
    return make('li', {}, field ? `${labelOf(field)}: ${violation.message}` : violation.message);
  });
  byId('mistakes').querySelector('ul').replaceChildren(
    ...(items.length > 0 ? items : [make('li', {}, problem.detail)]));
  tell(`${items.length} to correct.`);
}

function mark(field, message) {
  const id = `${field.id || 'list'}-mistake`;
  const note = byId(id) ?? make('p', { id, class: 'mistake' });
  note.append(note.textContent ? ' ' : '', message);
  field.insertAdjacentElement('afterend', note);
  field.setAttribute('aria-invalid', 'true');
  field.setAttribute('aria-describedby', id);
  for (let fold = field.closest('details'); fold; fold = fold.parentElement.closest('details')) {
    fold.open = true;
  }
}

function clearMistakes() {
  for (const note of byId('asked').querySelectorAll('.mistake')) note.remove();
  for (const field of byId('asked').querySelectorAll('[aria-invalid]')) {
    field.removeAttribute('aria-invalid');
    field.removeAttribute('aria-describedby');
  }
}

/** The field of a pointer, or of the nearest member above it. */
function fieldFor(pointer, fields) {
  for (let path = pointer; path !== ''; path = path.slice(0, path.lastIndexOf('/'))) {
    if (fields.has(path)) return fields.get(path);
  }
  return [...fields].find(([path]) => path.startsWith(`${pointer}/`))?.[1] ?? null;
}

/** Paper shows the pictures and tables that are folded on the screen. */
function openOnPaper() {
  let opened = [];
  window.addEventListener('beforeprint', () => {
    opened = [...byId('answer').querySelectorAll('details:not([open]):not(.working)')];
    for (const fold of opened) fold.open = true;
  });
  window.addEventListener('afterprint', () => {
    for (const fold of opened) fold.open = false;
  });
}

const tell = (text) => { byId('state').textContent = text; };
const getJson = async (address) => (await fetch(address)).json();

start();
