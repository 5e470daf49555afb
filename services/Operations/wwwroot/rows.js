// The rows of the table. A row stays the same element while its order lives, so that focus,
// selection and scroll place survive every change.

import { byId, link, make, setText } from './dom.js';
import { ageText, clockText, dateText, daysUntil } from './time.js';

export const states = {
  confirmed: { icon: '○', word: 'Waiting for plan' },
  planned: { icon: '◐', word: 'Waiting for labels' },
  labelled: { icon: '●', word: 'Labelled' },
  parked: { icon: '▲', word: 'Parked' },
};

const mostReasons = 1;
const rows = new Map();

/** Shows these orders, in this order. */
export function showRows(orders, actions) {
  const body = byId('rows');
  const kept = new Set(orders.map((order) => order.orderNumber));
  for (const [number, row] of rows) {
    if (kept.has(number)) continue;
    row.element.remove();
    rows.delete(number);
  }

  let place = body.firstElementChild;
  for (const order of orders) {
    const row = rows.get(order.orderNumber) ?? newRow(order.orderNumber, actions);
    if (row.element === place) {
      place = place.nextElementSibling;
    } else {
      moveBefore(body, row.element, place);
    }
    update(row, order, actions);
  }
}

export function tickRows() {
  for (const { order, waiting } of rows.values()) {
    if (order.waitingSince) setText(waiting.firstChild, ageText(Date.parse(order.waitingSince)));
  }
}

/** Draws the eye to rows that changed by themselves. */
export function flash(numbers) {
  for (const number of numbers) {
    const row = rows.get(number)?.element;
    if (!row) continue;
    row.classList.remove('changed');
    void row.offsetWidth;
    row.classList.add('changed');
  }
}

function moveBefore(body, element, place) {
  const focused = element.contains(document.activeElement) ? document.activeElement : null;
  body.insertBefore(element, place);
  focused?.focus({ preventScroll: true });
}

function newRow(number, { onOpen }) {
  const open = make('button', { type: 'button', class: 'text', 'aria-haspopup': 'dialog' }, number);
  const revision = make('small');
  const row = {
    state: make('td'), waiting: make('td', { class: 'num' }, make('span'), make('small')),
    needed: make('td', { class: 'day' }), shipTo: make('td', { class: 'name' }),
    building: make('td', { class: 'name building' }, make('span'), make('small')),
    pieces: make('td', { class: 'num' }), rolls: make('td', { class: 'num' }),
    cut: make('td', { class: 'num' }), papers: make('td', { class: 'papers' }),
    shown: {}, revision,
  };
  row.element = make('tr', {}, make('th', { scope: 'row' }, open, revision),
    row.state, row.waiting, row.needed, row.shipTo, row.building, row.pieces, row.rolls, row.cut,
    row.papers);
  open.addEventListener('click', () => onOpen(number));
  rows.set(number, row);
  return row;
}

function update(row, order, { onOpen, onRetry, cutOf }) {
  row.order = order;
  const cut = cutOf(order);
  setText(row.revision, order.revision > 1 ? `revision ${order.revision}` : '');
  setText(row.waiting.firstChild,
    order.waitingSince ? ageText(Date.parse(order.waitingSince)) : '');
  setText(row.waiting.lastChild, order.finishedAt ? `done ${clockText(order.finishedAt)}` : '');
  setText(row.shipTo, order.shipTo);
  setText(row.building.firstChild, order.building);
  setText(row.building.lastChild, order.buildingSummary);
  setText(row.pieces, `${order.pieces}`);
  setText(row.rolls, order.rolls === null ? '–' : `${order.rolls}`);
  setText(row.cut, cut ? `${cut.piecesCut} of ${cut.pieces}` : cut === null ? 'all' : '–');
  renew(row, 'state', [order.state, order.parkedAt, order.reasons],
    () => [stateMark(order.state), ...parkedNotes(order, onRetry)]);
  renew(row, 'needed', [order.neededBy, isOpen(order, cut), daysUntil(order.neededBy)],
    () => [dateText(order.neededBy), isOpen(order, cut) ? dueMark(order.neededBy) : null]);
  renew(row, 'papers', order.links, () => [planButton(order, onOpen), ...paperLinks(order)]);
}

/** Makes a cell's content anew only when what it shows is another. */
function renew(row, cell, shown, content) {
  const key = JSON.stringify(shown);
  if (row.shown[cell] === key) return;
  row.shown[cell] = key;
  const held = row[cell].contains(document.activeElement);
  row[cell].replaceChildren(...content().filter((part) => part !== null));
  if (held) row.element.querySelector('button').focus({ preventScroll: true });
}

/** Whether work is left on it, as far as the board knows. */
const isOpen = (order, cut) => order.state !== 'labelled' || !!cut;

export function stateMark(state) {
  const { icon, word } = states[state];
  return make('span', { class: `state ${state}` },
    make('i', { 'aria-hidden': 'true' }, icon), make('span', {}, word));
}

export function dueMark(neededBy) {
  const days = daysUntil(neededBy);
  if (days > 1) return null;
  const [icon, word] = days < 0
    ? ['⚠', days === -1 ? 'Overdue by 1 day' : `Overdue by ${-days} days`]
    : ['◆', days === 0 ? 'Due today' : 'Due tomorrow'];
  return make('span', { class: days < 0 ? 'due late' : 'due' },
    make('span', { 'aria-hidden': 'true' }, icon + ' '), word);
}

function parkedNotes(order, onRetry) {
  if (order.state !== 'parked') return [];
  const told = order.reasons.slice(0, mostReasons).map((reason) => make('li', {}, reason));
  const left = order.reasons.length - told.length;
  if (left > 0) {
    told.push(make('li', {}, `and ${left} more ${left === 1 ? 'reason' : 'reasons'}`));
  }
  const button = make('button', {
    type: 'button', class: 'small', 'aria-label': `Try ${order.orderNumber} again`,
  }, 'Try again');
  const answer = make('span', {}, order.parkedAt ? `refused ${clockText(order.parkedAt)}` : '');
  button.addEventListener('click', () => onRetry(order, button, answer));
  return [make('ul', { class: 'reasons' }, told),
    order.links.tryAgain ? make('div', { class: 'retry' }, button, answer) : null];
}

export function paperLinks(order) {
  const { orderNumber: number, links } = order;
  const papers = [
    [links.labels, 'Labels', 'labels, PDF'], [links.checklist, 'Checklist', 'checklist, PDF'],
  ].filter(([address]) => address);
  return papers.map(([address, text, what]) => link(address, text, {
    'aria-label': `${number}: ${what}`, target: '_blank', rel: 'noopener',
  }));
}

function planButton(order, onOpen) {
  if (order.links.plan === null) return null;
  const button = make('button', {
    type: 'button', class: 'text', 'aria-haspopup': 'dialog',
    'aria-label': `${order.orderNumber}: cutting plan`,
  }, 'Plan');
  button.addEventListener('click', () => onOpen(order.orderNumber));
  return button;
}
