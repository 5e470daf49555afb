// The cutting queue in figures: what is left to cut, and how much of it is due.

import { byId, make, setText } from './dom.js';
import { ageText, daysUntil, now } from './time.js';

const everyMs = 15000;
const soonMs = 1500;
let entries = null;
let isComplete = false;
let askedAt = 0;
let oldest = null;
let asking = 0;
let isAskedSoon = false;
let ask = null;

/** Of an order: its entry, null when nothing is left to cut, undefined when that is not known. */
export function cutOf(order) {
  const entry = entries?.get(order.orderNumber);
  if (entry) return entry;
  const wasListed = order.finishedAt && Date.parse(order.finishedAt) < askedAt;
  return entries && isComplete && wasListed ? null : undefined;
}

/** Asks soon again, because orders changed; at most once in a while, however busy the day. */
export function askQueueSoon() {
  if (ask === null || isAskedSoon) return;
  isAskedSoon = true;
  clearTimeout(asking);
  asking = setTimeout(ask, soonMs);
}

export function watchQueue(address, onChange) {
  ask = async () => {
    const since = now();
    isAskedSoon = false;
    try {
      const answer = await fetch(address, { headers: { Accept: 'application/json' } });
      if (!answer.ok) throw new Error(`status ${answer.status}`);
      show(await answer.json());
      askedAt = since;
      byId('queueNote').hidden = true;
    } catch {
      entries = null;
      clear();
    }
    onChange();
    clearTimeout(asking);
    asking = setTimeout(ask, everyMs);
  };
  ask();
}

export function tickQueue() {
  if (oldest !== null) {
    const age = byId('oldestToCut').firstChild;
    if (age) setText(age, ageText(oldest));
  }
}

function show({ orders, hasMore }) {
  entries = new Map(orders.map((order) => [order.orderNumber, order]));
  isComplete = !hasMore;
  const more = hasMore ? '+' : '';
  // Orders that are cut together share rolls: each is counted once.
  const rolls = (some) => new Set(some.flatMap((order) => order.rollIds)).size;
  setText(byId('toCut'), orders.length + more);
  setText(byId('rollsToCut'), rolls(orders) + more);
  setText(byId('rollsDue'),
    rolls(orders.filter((order) => daysUntil(order.neededBy) <= 0)) + more);
  oldest = orders.length > 0 ? Date.parse(orders[0].waitingSince) : null;
  byId('oldestToCut').replaceChildren(...oldest === null ? ['–'] : [
    make('span', {}, ageText(oldest)), make('small', {}, orders[0].orderNumber),
  ]);
}

function clear() {
  for (const id of ['toCut', 'rollsToCut', 'rollsDue', 'oldestToCut']) setText(byId(id), '–');
  oldest = null;
  setText(byId('queueNote'),
    'The cutting service does not answer just now; what is left to cut is not known.');
  byId('queueNote').hidden = false;
}
