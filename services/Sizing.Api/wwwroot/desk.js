// The desk page: what is entered is asked of POST /v1/sizings at once, and shown.

import { byId, make } from './dom.js';
import { clearMistakes, fieldFor, fillForm, makeForm, readForm, showDefaults, showMistakes }
  from './form.js';
import { addPlanes, chooseLastStrip, dropPlanes, setProducts } from './insulation.js';
import { showAnswer } from './answer.js';
import { takeOrders } from './order.js';
import { showMap } from './map.js';
import { counted } from './units.js';

const typingPauseMs = 250;

let waiting = 0;
let asking = new AbortController();

async function start() {
  const [products, examples, host] = await Promise.all([
    getJson('/v1/products'), getJson('/desk/examples.json'), getJson('/desk/host.json'),
  ]);
  byId('board').hidden = !host.board;
  if (host.orders) takeOrders();
  setProducts(products.products);
  makeForm();
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
  byId('building').addEventListener('input', (event) => {
    if (event.target.closest?.('#order')) return;
    standBy();
    clearTimeout(waiting);
    waiting = setTimeout(ask, typingPauseMs);
  });
  byId('building').addEventListener('submit', (event) => event.preventDefault());
  for (const [id, type, ending] of [
    ['mapSvg', 'image/svg+xml', 'svg'], ['mapPdf', 'application/pdf', 'pdf'],
  ]) byId(id).addEventListener('click', () => save(type, ending));
  show();
}

/** What is on its way belongs to what was entered before. */
function standBy() {
  asking.abort();
  document.body.dataset.state = 'waiting';
}

async function ask() {
  standBy();
  clearTimeout(waiting);
  asking = new AbortController();
  const { signal } = asking;
  dropLeanTos();
  const { request, fields } = readForm();
  try {
    const [answer, drawing] = await Promise.all([
      post('/v1/sizings', request, 'application/json', signal),
      post('/v1/sizings/drawing', request, 'image/svg+xml', signal),
    ]);
    if (answer.ok) {
      show(await answer.json(), await drawing.text());
    } else {
      refuse(await answer.json(), fields);
    }
    document.body.dataset.state = answer.ok ? 'answered' : 'refused';
  } catch (failure) {
    if (failure.name !== 'AbortError') tell('The desk cannot reach its service just now.');
  }
}

function show(answer, drawing) {
  clearMistakes();
  byId('mistakes').hidden = true;
  byId('answer').hidden = false;
  byId('answer').classList.remove('stale');
  addPlanes(answer);
  showDefaults(answer.assumptions);
  showAnswer(answer);
  showMap(answer, drawing);
  tell(`${counted(answer.totals.pieces, 'pieces')}. Up to date.`);
}

function refuse(problem, fields) {
  const violations = problem.violations ?? [];
  const homeless = showMistakes(violations, fields);
  const box = byId('mistakes');
  box.hidden = false;
  box.querySelector('h2').textContent = violations.length > 1
    ? `${violations.length} things to correct` : 'One thing to correct';
  box.querySelector('ul').replaceChildren(...violations.map((violation) => {
    const input = fieldFor(violation.pointer, fields);
    const hasHome = input && !homeless.includes(violation);
    const text = hasHome ? `${nameOf(input)}: ${violation.message}` : violation.message;
    return make('li', {}, hasHome ? make('a', { href: `#${input.id}` }, text) : text);
  }));
  if (violations.length === 0) box.querySelector('ul').append(make('li', {}, problem.detail));
  byId('answer').classList.add('stale');
  tell(byId('answer').hidden ? '' : 'Below is the last building that worked.');
}

/** What a field is called: its group, if it is one of several alike, and its label. */
function nameOf(input) {
  const group = input.closest('.item')?.getAttribute('aria-label');
  const own = input.getAttribute('aria-label') ?? input.labels[0].textContent;
  return group ? `${group}, ${own.toLowerCase()}` : own;
}

/** A lean-to that was taken away takes the rows of its planes with it. */
function dropLeanTos() {
  const sides = new Set([...byId('leanTos').querySelectorAll('[data-member="side"]')]
    .map((select) => select.value));
  dropPlanes((plane) => !/^lean/.test(plane) || sides.has(plane.slice(-1))
    || [...sides].some((side) => plane.includes(side)));
}

async function save(type, ending) {
  const { request } = readForm();
  const answer = await post('/v1/sizings/drawing', request, type);
  if (!answer.ok) return;
  const link = make('a', {
    href: URL.createObjectURL(await answer.blob()),
    download: `${(request.building.name || 'building').replace(/[^\w-]+/g, '-')}.${ending}`,
  });
  link.click();
  URL.revokeObjectURL(link.href);
}

const getJson = async (address) => (await fetch(address)).json();

const post = (address, body, accept, signal) => fetch(address, {
  method: 'POST',
  headers: { 'Content-Type': 'application/json', Accept: accept },
  body: JSON.stringify(body),
  signal,
});

const tell = (text) => { byId('state').textContent = text; };

byId('copyRequest').addEventListener('click', async () => {
  await navigator.clipboard.writeText(JSON.stringify(readForm().request, null, 2));
  tell('Copied. Post it to /v1/sizings, or try it under API.');
});

byId('warnings').addEventListener('change', (event) => {
  const { lastStrip } = event.target.dataset;
  if (!lastStrip) return;
  chooseLastStrip(lastStrip, event.target.value);
  ask();
});

byId('mistakes').addEventListener('click', (event) => {
  const link = event.target.closest('a');
  if (!link) return;
  event.preventDefault();
  byId(link.hash.slice(1)).focus();
});

start().catch(() => tell('The desk cannot reach its service just now. Reload to try again.'));
