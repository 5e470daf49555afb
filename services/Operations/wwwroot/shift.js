// Cutting orders together: what each size of group costs in material, and choosing one.

import { byId, make } from './dom.js';

const feet = (length) => `${length.toLocaleString('en-US', { maximumFractionDigits: 1 })} ft`;
let address = '';
let isAsked = false;

/** Compares when the section is opened, and again on request: it takes the planner a while. */
export function offerShift(shift) {
  address = shift;
  byId('shift').addEventListener('toggle', () => {
    if (byId('shift').open && !isAsked) compare();
  });
  byId('compareShift').addEventListener('click', compare);
}

async function compare() {
  isAsked = true;
  say('Planning each size of group…');
  byId('compareShift').disabled = true;
  try {
    const answer = await fetch(address, { headers: { Accept: 'application/json' } });
    const body = await answer.json();
    if (answer.ok) show(body);
    else say(body.detail, true);
  } catch {
    say('The cutting service does not answer just now.', true);
  }
  byId('compareShift').disabled = false;
}

function show(shift) {
  say(`${shift.orders.length} orders are not begun: ${shift.orders.join(', ')}. Each by itself `
    + `they take ${shift.rollsSeparately} new rolls, all together ${shift.rollsTogether}: `
    + `${feet(shift.savedFt)} saved. No plan can do with fewer than ${shift.lowerBoundRolls}.`);
  byId('shiftRows').replaceChildren(
    make('tr', {}, make('th', { scope: 'row' }, 'One plane at a time'),
      make('td', { class: 'num' }, '1'), ...price(shift.onePlaneAtATime),
      make('td', {}, 'to compare')),
    ...shift.windows.map((choice) => row(shift, choice)));
  byId('shiftTable').hidden = false;
}

function row(shift, choice) {
  const isAll = choice.ordersTogether === shift.orders.length;
  const name = choice.ordersTogether === 1 ? 'Each by itself'
    : isAll ? `All ${choice.ordersTogether} together` : `${choice.ordersTogether} at a time`;
  const button = make('button', { type: 'button', class: 'small' }, 'Cut them so');
  button.addEventListener('click', () => choose(shift.orders, choice.ordersTogether, name));
  return make('tr', {},
    make('th', { scope: 'row' }, name),
    make('td', { class: 'num' }, `${choice.mostOpen}`), ...price(choice),
    make('td', {}, button));
}

/** The price of a choice in material. */
const price = (choice) => [
  `${choice.rolls}`, feet(choice.boughtFt),
  choice.moreThanLeastFt > 0 ? `+${feet(choice.moreThanLeastFt)}` : 'least',
  `${choice.wastePercent} %`,
].map((figure) => make('td', { class: 'num' }, figure));

async function choose(orders, ordersTogether, name) {
  say(`${name}: asking…`);
  busy(true);
  try {
    const answer = await fetch(address, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': crypto.randomUUID() },
      body: JSON.stringify({ orders, ordersTogether }),
    });
    const body = await answer.json();
    say(answer.ok
      ? `${name}: ${body.orders.length} orders are planned anew. Their labels follow; pieces `
        + 'keep their ids.'
      : body.detail, !answer.ok);
  } catch {
    say('The cutting service does not answer just now; nothing may have changed. Compare again.',
      true);
  }
  busy(false);
}

function busy(isBusy) {
  byId('shiftRows').querySelectorAll('button').forEach((one) => { one.disabled = isBusy; });
}

function say(text, hidesTable = false) {
  byId('shiftNote').textContent = text;
  if (hidesTable) byId('shiftTable').hidden = true;
}
