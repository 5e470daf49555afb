// The board: every order, live. What is on show is read once and then kept true by the stream.

import { byId, make, setText } from './dom.js';
import { openDetail, shownOrder } from './detail.js';
import { askQueueSoon, cutOf, tickQueue, watchQueue } from './queue.js';
import { flash, showRows, states, tickRows } from './rows.js';
import { offerShift } from './shift.js';
import { follow } from './stream.js';
import { ageText, clockText, setClock } from './time.js';

const pageSize = 200;
const typingPauseMs = 250;
const quietMs = 2500;
const againMs = 3000;

const orders = new Map();
let next = null;
let longestSince = null;
let readAt = 0;
let asked = 0;
let isFollowing = false;

const filter = () => ({
  state: new FormData(byId('filter')).get('state') ?? '',
  search: byId('search').value.trim(),
});

/** Reads the first page for the filter, or the page behind what is on show. */
async function read(further = false) {
  const turn = further ? asked : ++asked;
  const { state, search } = filter();
  const query = new URLSearchParams({ limit: pageSize });
  if (state) query.set('state', state);
  if (search) query.set('search', search);
  if (further) query.set('after', next);
  try {
    const answer = await fetch(`/v1/pipeline?${query}`);
    if (!answer.ok) throw new Error(`status ${answer.status}`);
    const body = await answer.json();
    if (turn !== asked) return;
    if (!further) orders.clear();
    body.orders.forEach((order) => orders.set(order.orderNumber, order));
    next = body.next;
    setClock(body.asOf);
    showSummary(body.summary);
    show();
    start(body);
  } catch {
    link('reconnecting');
    if (!further) setTimeout(() => turn === asked && read(), againMs);
  }
}

/** Once, after the first answer: follow the changes and the cutting queue. */
function start(body) {
  byId('notice').hidden = true;
  if (isFollowing) return;
  isFollowing = true;
  byId('desk').href = body.links.desk;
  byId('emptyDesk').href = body.links.desk;
  watchQueue(body.links.cuttingQueue, show);
  offerShift(body.links.shift);
  follow(body.lastEventId, { onChange: take, onStale: () => read(), onLink: link });
}

/** Takes changed orders in where they belong on show. */
function take({ orders: changed, summary, asOf }) {
  setClock(asOf);
  const told = [];
  const end = last();
  for (const order of changed) {
    const before = orders.get(order.orderNumber);
    if (!matches(order)) {
      orders.delete(order.orderNumber);
    } else if (before || next === null || isBefore(order, end)) {
      orders.set(order.orderNumber, order);
    }
    if (before?.state !== order.state) told.push(order);
  }
  showSummary(summary);
  show();
  flash(changed.map((order) => order.orderNumber));
  announce(told);
  askQueueSoon();
  const open = changed.find((order) => order.orderNumber === shownOrder());
  if (open) openDetail(open);
}

function matches(order) {
  const { state, search } = filter();
  const text = search.toLowerCase();
  return (!state || order.state === state) && (!text
    || [order.orderNumber, order.shipTo, order.building].some(
      (part) => part.toLowerCase().includes(text)));
}

/** As the service sorts: what waits, the longest first; then what is finished, the newest first. */
function isBefore(a, b) {
  if (!a.finishedAt !== !b.finishedAt) return !a.finishedAt;
  const [left, right] = a.finishedAt
    ? [-Date.parse(a.finishedAt), -Date.parse(b.finishedAt)]
    : [Date.parse(a.confirmedAt), Date.parse(b.confirmedAt)];
  return left !== right ? left < right : a.orderNumber < b.orderNumber;
}

const sorted = () => [...orders.values()].sort((a, b) => (isBefore(a, b) ? -1 : 1));
const last = () => sorted().at(-1) ?? {};

function show() {
  const list = sorted();
  showRows(list, { onOpen: (number) => openDetail(orders.get(number)), onRetry: retry, cutOf });
  const { state, search } = filter();
  const isFiltered = state !== '' || search !== '';
  byId('orders').hidden = list.length === 0;
  byId('empty').hidden = list.length > 0;
  setText(byId('emptyText'), isFiltered
    ? 'No order is like that.' : 'No orders yet. One shows here the moment it is confirmed.');
  byId('clear').hidden = !isFiltered;
  byId('emptyDesk').hidden = isFiltered;
  byId('more').hidden = next === null;
  setText(byId('shown'), `${list.length} ${list.length === 1 ? 'order' : 'orders'} shown`
    + `${next === null ? '' : ', there are more'}. Those that wait come first, the longest `
    + 'waiting on top.');
}

function showSummary(summary) {
  for (const [id, value] of Object.entries({
    countConfirmed: summary.confirmed, countPlanned: summary.planned, countParked: summary.parked,
    chipAll: summary.orders, chipConfirmed: summary.confirmed, chipPlanned: summary.planned,
    chipParked: summary.parked, chipLabelled: summary.labelled,
  })) setText(byId(id), `${value}`);
  byId('parkedTotal').classList.toggle('bad', summary.parked > 0);
  longestSince = summary.oldestWaitingSince && Date.parse(summary.oldestWaitingSince);
  document.title = summary.parked > 0
    ? `(${summary.parked} parked) Operations board` : 'Operations board';
  tick();
}

function tick() {
  setText(byId('longest'), longestSince ? ageText(longestSince) : '–');
  tickRows();
  tickQueue();
}

/** Says on screen, and once to a screen reader, whether the board is live. */
function link(state) {
  const lamp = byId('link');
  if (state === 'live') readAt = Date.now();
  if (lamp.dataset.link === state) return;
  const text = {
    live: 'Live', paused: 'Paused while out of sight',
    reconnecting: readAt
      ? `Reconnecting. Shown as of ${clockText(readAt)}` : 'Reconnecting',
  }[state];
  if (lamp.dataset.link !== 'connecting') say(text);
  lamp.dataset.link = state;
  setText(byId('linkText'), text);
}

async function retry(order, button, answer) {
  button.disabled = true;
  answer.textContent = 'asking…';
  try {
    const response = await fetch(order.links.tryAgain, { method: 'POST' });
    answer.textContent = response.ok
      ? 'taken up again; the answer shows here'
      : (await response.json()).detail;
  } catch {
    answer.textContent = 'Orders does not answer just now.';
  }
  button.disabled = false;
  say(`${order.orderNumber}: ${answer.textContent}`);
}

let saying = 0;
let untold = [];

/** Gathers what changed and says it in one sentence, so that a busy day can still be listened to. */
function announce(changed) {
  untold.push(...changed);
  if (untold.length === 0 || saying) return;
  saying = setTimeout(() => {
    saying = 0;
    const told = untold;
    untold = [];
    say(told.length === 1
      ? `${told[0].orderNumber}: ${states[told[0].state].word}`
      : `${told.length} orders changed`);
  }, quietMs);
}

const say = (text) => byId('status').replaceChildren(make('span', {}, text));

let typing = 0;
byId('filter').addEventListener('submit', (event) => event.preventDefault());
byId('filter').addEventListener('change', () => read());
byId('search').addEventListener('input', () => {
  clearTimeout(typing);
  typing = setTimeout(() => read(), typingPauseMs);
});
byId('clear').addEventListener('click', () => {
  byId('filter').reset();
  byId('search').focus();
  read();
});
byId('more').addEventListener('click', () => read(true));
byId('closeDetail').addEventListener('click', () => byId('detail').close());
byId('detail').addEventListener('click', (event) => {
  if (event.target === byId('detail')) byId('detail').close();
});
setInterval(tick, 1000);
read();
