// The comparison page: what is entered is asked of POST /v1/comparisons, and shown.

import { byId, make } from '/desk/dom.js';
import { fillForm, makeForm, readForm } from './form.js';
import { showAnswer } from './answer.js';

const typingPauseMs = 300;

let waiting = 0;
let asking = new AbortController();

async function start() {
  const [catalogue, examples] = await Promise.all([
    getJson('/v1/products'), getJson('/compare/examples.json'),
  ]);
  makeForm(catalogue.products);
  const select = byId('example');
  select.append(...examples.map(({ id, title }) => make('option', { value: id }, title)));
  const show = () => {
    fillForm(examples.find(({ id }) => id === select.value).request);
    ask();
  };
  select.addEventListener('change', (event) => {
    event.stopPropagation();
    show();
  });
  byId('asked').addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, typingPauseMs);
  });
  byId('asked').addEventListener('submit', (event) => event.preventDefault());
  show();
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
    if (answer.ok) {
      byId('answer').hidden = false;
      showAnswer(body, fields);
      tell(`${body.lines.length} lines compared. Up to date.`);
    } else {
      refuse(body, fields);
    }
    document.body.dataset.state = answer.ok ? 'answered' : 'refused';
  } catch (failure) {
    if (failure.name !== 'AbortError') tell('The page cannot reach its service just now.');
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
  const id = `${field.id}-mistake`;
  const note = byId(id) ?? make('p', { id, class: 'mistake' });
  note.append(note.textContent ? ' ' : '', message);
  field.insertAdjacentElement('afterend', note);
  field.setAttribute('aria-invalid', 'true');
  field.setAttribute('aria-describedby', id);
  field.closest('details')?.setAttribute('open', '');
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
  return null;
}

const labelOf = (field) => field.labels[0]?.textContent ?? '';
const tell = (text) => { byId('state').textContent = text; };
const getJson = async (address) => (await fetch(address)).json();

start();
