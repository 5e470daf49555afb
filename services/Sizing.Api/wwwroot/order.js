// Sends the building on show as an order, and follows it until its labels are there.

import { byId, make } from './dom.js';
import { readForm } from './form.js';

const lookAgainMs = 700;
const mostLooks = 60;

/** The same order sent again carries the same key, so that it is never taken twice. */
let last = { body: '', key: '' };

export function takeOrders() {
  byId('order').hidden = false;
  byId('send').addEventListener('click', send);
}

async function send() {
  const { request } = readForm();
  const entered = (id) => byId(id).value.trim() || undefined;
  const body = JSON.stringify({
    orderNumber: entered('orderNumber'),
    neededBy: entered('neededBy'),
    shipTo: { name: entered('shipTo') },
    ...request,
  });
  if (body !== last.body) last = { body, key: crypto.randomUUID() };
  byId('send').disabled = true;
  clear();
  tell('Sending …');
  try {
    const answer = await fetch('/v1/orders', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': last.key },
      body,
    });
    if (answer.ok) await follow(answer.headers.get('Location'));
    else refuse(await answer.json());
  } catch {
    tell('Orders cannot be reached just now. Send again; it will not be taken twice.');
  } finally {
    byId('send').disabled = false;
  }
}

async function follow(address) {
  for (let look = 0; look < mostLooks; look++) {
    const order = await (await fetch(address)).json();
    show(order);
    if (order.state === 'labelled' || order.state === 'parked') return;
    await new Promise((done) => setTimeout(done, lookAgainMs));
  }
}

const states = {
  confirmed: 'is accepted and waits for its cutting plan.',
  planned: 'is planned and waits for its labels.',
  labelled: 'is ready for the shop.',
  parked: 'cannot go on by itself.',
};

function show(order) {
  const links = [
    ['Labels (PDF)', order.links.labels], ['Checklist (PDF)', order.links.checklist],
    ['On the board', byId('board').hidden ? null : '/board/'],
  ].filter(([, address]) => address);
  byId('sent').replaceChildren(
    `Order ${order.orderNumber} ${states[order.state]} `,
    ...order.parkReasons.map(({ text }) => `${text} `),
    make('br'), ...links.map(([text, href]) => make('a', { href }, text)));
}

function refuse(problem) {
  const homeless = [];
  for (const violation of problem.violations ?? []) {
    const input = document.querySelector(`[data-order="${violation.pointer}"]`)
      ?? document.querySelector(`[data-order="${violation.pointer}/name"]`);
    if (!input) {
      homeless.push(violation.message);
      continue;
    }
    const id = `${input.id}-mistake`;
    input.insertAdjacentElement('afterend', make('p', { id, class: 'mistake' }, violation.message));
    input.setAttribute('aria-invalid', 'true');
    input.setAttribute('aria-describedby', id);
  }
  tell(problem.violations ? ['Not sent.', ...homeless].join(' ') : `Not sent. ${problem.detail}`);
}

function clear() {
  for (const note of byId('order').querySelectorAll('.mistake')) note.remove();
  for (const input of byId('order').querySelectorAll('[aria-invalid]')) {
    input.removeAttribute('aria-invalid');
    input.removeAttribute('aria-describedby');
  }
}

const tell = (text) => { byId('sent').textContent = text; };
