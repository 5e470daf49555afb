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
  const fewest = `No plan can do with fewer than ${rolls(shift.lowerBoundRolls)}.`;
  say(shift.orders.length === 1
    ? `Order ${shift.orders[0]} is not begun. By itself it takes `
      + `${rolls(shift.rollsSeparately)}. ${fewest}`
    : `${shift.orders.length} orders are not begun: ${shift.orders.join(', ')}. Each by itself `
      + `they take ${rolls(shift.rollsSeparately)}, all together ${shift.rollsTogether}: `
      + `${feet(shift.savedFt)} saved. ${fewest}`);
  byId('shiftRows').replaceChildren(
    row(shift, 'One plane at a time', { ...shift.onePlaneAtATime, mostOpen: 1 },
      { onePlaneAtATime: true }),
    ...shift.windows.map((choice) => row(shift, nameOf(shift, choice), choice,
      { ordersTogether: choice.ordersTogether })));
  byId('shiftTable').hidden = false;
}

const rolls = (count) => `${count} new ${count === 1 ? 'roll' : 'rolls'}`;

function nameOf(shift, choice) {
  if (choice.ordersTogether === 1) return 'Each order by itself';
  return choice.ordersTogether === shift.orders.length
    ? `All ${choice.ordersTogether} together` : `${choice.ordersTogether} at a time`;
}

function row(shift, name, choice, wish) {
  const button = make('button',
    { type: 'button', class: 'small', 'aria-label': `Cut them so: ${name}` }, 'Cut them so');
  button.addEventListener('click', () => choose(name, { orders: shift.orders, ...wish }));
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

async function choose(name, wish) {
  say(`${name}: asking…`);
  busy(true);
  try {
    const answer = await fetch(address, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': crypto.randomUUID() },
      body: JSON.stringify(wish),
    });
    const body = await answer.json();
    say(answer.ok
      ? `${name}: ${body.orders.length === 1 ? `order ${body.orders[0]} is`
        : `${body.orders.length} orders are`} planned anew. The labels follow; pieces keep `
        + 'their ids.'
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
