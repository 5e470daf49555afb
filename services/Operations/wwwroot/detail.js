// One order: where it stands, and its cutting plan with every roll drawn as a bar.

import { byId, draw, link, make } from './dom.js';
import { clockText, dateText } from './time.js';
import { dueMark, paperLinks, stateMark } from './rows.js';

const barWidth = 1000;
const barHeight = 40;
const fills = { sidewall: 'url(#bars)', endwall: 'url(#dots)' };
let shown = null;

export const shownOrder = () => (byId('detail').open ? shown : null);

export async function openDetail(order) {
  const dialog = byId('detail');
  shown = order.orderNumber;
  byId('detailTitle').textContent = `Order ${order.orderNumber}`;
  const plan = make('div', { 'aria-live': 'polite' });
  byId('detailBody').replaceChildren(...[facts(order), papers(order), reasons(order), plan]
    .filter((part) => part !== null));
  if (!dialog.open) {
    dialog.showModal();
    byId('detailTitle').focus();
  }
  if (order.links.plan === null) {
    plan.replaceChildren(make('p', {}, order.state === 'parked'
      ? 'There is no cutting plan: see the reasons above.'
      : 'The cutting plan is being made. It shows here as soon as it is there.'));
    return;
  }
  plan.replaceChildren(make('p', {}, 'Fetching the cutting plan…'));
  try {
    const answer = await fetch(order.links.plan, { headers: { Accept: 'application/json' } });
    const body = await answer.json();
    if (shown !== order.orderNumber) return;
    plan.replaceChildren(...answer.ok ? planParts(body) : [make('p', {}, body.detail)]);
  } catch {
    if (shown !== order.orderNumber) return;
    plan.replaceChildren(make('p', {},
      'The cutting service does not answer just now. Close this and open it again to retry.'));
  }
}

function facts(order) {
  const pairs = [
    ['State', stateMark(order.state)],
    ['Revision', `${order.revision}`],
    ['Ship to', order.shipTo],
    ['Building', `${order.building} · ${order.buildingSummary}`],
    ['Needed by', [dateText(order.neededBy),
      order.state === 'labelled' ? null : dueMark(order.neededBy)]],
    ['Confirmed', clockText(order.confirmedAt)],
    ['Planned', order.plannedAt && clockText(order.plannedAt)],
    ['Labelled', order.finishedAt && clockText(order.finishedAt)],
    ['Refused', order.parkedAt && clockText(order.parkedAt)],
  ].filter(([, value]) => value);
  return make('dl', { class: 'facts' }, pairs.map(([term, value]) =>
    make('div', {}, make('dt', {}, term), make('dd', {}, value))));
}

function papers(order) {
  return make('p', { class: 'plates' }, paperLinks(order),
    order.links.plan ? link(order.links.plan, 'Plan as data', { target: '_blank' }) : null,
    link(order.links.order, 'Order with its history', { target: '_blank' }));
}

function reasons(order) {
  return order.reasons.length === 0 ? null : make('div', {},
    make('h3', {}, 'Why it is parked'),
    make('ul', {}, order.reasons.map((reason) => make('li', {}, reason))));
}

function planParts(body) {
  return [
    patterns(),
    legend(),
    ...body.warnings.map((text) => make('p', { class: 'due' },
      make('span', { 'aria-hidden': 'true' }, '⚠ '), text)),
    body.planNumber > 1 ? make('p', { class: 'note' }, `Plan ${body.planNumber}: planned anew `
      + 'around what was cut. The labels follow it; pieces keep their ids.') : '',
    body.onePlaneAtATime ? make('p', { class: 'note' }, 'One plane at a time was chosen: the '
      + 'roll on the stand goes on with the next plane; it may take more rolls.') : '',
    ...body.plans.flatMap((plan) => [
      make('h3', {}, `${plan.productTitle}, ${plan.widthText} wide: ${rollCount(plan)}`),
      make('p', { class: 'note' },
        `${plan.rolls === plan.lowerBoundRolls
          ? 'No plan can do with fewer rolls.'
          : `No plan can do with fewer than ${plan.lowerBoundRolls} rolls.`} `
        + `Trim loss ${plan.material.trimLossPercent} %.`),
      ...plan.rollList.map((roll) => rollBar(roll, body.orderNumber)),
      cutTable(plan, body.orderNumber),
    ]),
  ];
}

function rollCount(plan) {
  const own = plan.rollList.length;
  const text = `${own} ${own === 1 ? 'roll' : 'rolls'}`;
  return own < plan.rolls ? `${text} of the ${plan.rolls} planned together` : text;
}

function legend() {
  return make('p', { class: 'legend' }, [
    ['roof', 'Roof: solid'], ['sidewall', 'Sidewall: bars'], ['endwall', 'Endwall: dots'],
    ['offcut', 'Offcut, back to the rack'], ['scrap', 'End trim and scrap'],
  ].map(([kind, text]) => make('span', {},
    make('span', { class: `swatch ${kind}`, 'aria-hidden': 'true' }), text)));
}

function kindOf(cut, order) {
  if (cut.orderNumber !== order) return 'other';
  return /roof/i.test(cut.plane) ? 'roof' : /sidewall/i.test(cut.plane) ? 'sidewall'
    : /endwall/i.test(cut.plane) ? 'endwall' : 'other';
}

function rollBar(roll, order) {
  const scale = barWidth / roll.rollLengthIn;
  const bar = draw('svg', {
    viewBox: `-1 -1 ${barWidth + 2} ${barHeight + 2}`, role: 'img', 'aria-label': inWords(roll),
  }, draw('rect', {
    width: barWidth, height: barHeight, class: 'fill-scrap', fill: 'url(#waste)',
  }));
  let at = roll.endTrimIn * scale;
  for (const cut of roll.cuts) {
    const width = cut.cutIn * scale;
    bar.append(...piece(cut, kindOf(cut, order), at, width, order));
    at += width;
  }
  if (roll.leftOver === 'offcut') {
    const width = roll.leftOverIn * scale;
    bar.append(draw('rect', { x: at, width, height: barHeight, class: 'fill-offcut' }),
      ...label(at, width, ['Offcut', roll.leftOverText], false));
  }
  return make('div', { class: 'roll' },
    make('span', {}, `Roll ${roll.roll}`,
      make('small', {}, roll.finished ? 'finished' : roll.stockId ?? roll.rollLengthText),
      roll.lot ? make('small', {}, `lot ${roll.lot}`) : null),
    bar,
    make('span', {}, roll.leftOverText, make('small', {},
      roll.leftOver === 'offcut' ? 'offcut, to the rack' : 'left over, scrap')));
}

function piece(cut, kind, x, width, order) {
  const mark = cut.orderNumber === order ? cut.mark : cut.orderNumber;
  const done = cut.state === 'cut' ? '✓ ' : cut.state === 'voided' ? '✕ ' : '';
  return [
    draw('rect', {
      x, width, height: barHeight, class: `piece fill-${kind}`, fill: fills[kind] ?? null,
    }),
    ...label(x, width, [done + mark, cut.cutText], kind !== 'other'),
  ];
}

/** Text on a bar, on a plate so that no pattern runs through it; left out where it has no room. */
function label(x, width, [first, second], plated) {
  const room = (text) => text.length * 6.6 + 8;
  const lines = room(first) > width ? []
    : room(second) > width ? [[first, 25, '']] : [[first, 17, ''], [second, 31, 'small']];
  if (lines.length === 0) return [];
  const wide = Math.min(width - 4, Math.max(...lines.map(([text]) => room(text))));
  return [
    plated ? draw('rect', {
      x: x + (width - wide) / 2, y: 4, width: wide, height: barHeight - 8, rx: 3, class: 'plate',
    }) : null,
    ...lines.map(([text, y, size]) => draw('text', {
      x: x + width / 2, y, 'text-anchor': 'middle', class: size || null,
    }, text)),
  ].filter((part) => part !== null);
}

function patterns() {
  return draw('svg', { class: 'patterns', 'aria-hidden': 'true' }, draw('defs', {},
    draw('pattern', { id: 'bars', width: 8, height: 8, patternUnits: 'userSpaceOnUse',
      patternTransform: 'rotate(45)' },
      draw('rect', { width: 8, height: 8, fill: '#fff' }),
      draw('rect', { width: 4, height: 8, fill: '#009e73' })),
    draw('pattern', { id: 'dots', width: 8, height: 8, patternUnits: 'userSpaceOnUse' },
      draw('rect', { width: 8, height: 8, fill: '#fff' }),
      draw('circle', { cx: 4, cy: 4, r: 2.4, fill: '#cc79a7' })),
    draw('pattern', { id: 'waste', width: 6, height: 6, patternUnits: 'userSpaceOnUse',
      patternTransform: 'rotate(-45)' },
      draw('rect', { width: 6, height: 6, fill: '#fff' }),
      draw('rect', { width: 1.2, height: 6, fill: '#aeb7bf' }))));
}

function inWords(roll) {
  const cuts = roll.cuts.map((cut) => `${cut.mark} ${cut.cutText}`).join(', ');
  return `Roll ${roll.roll}, ${roll.rollLengthText}: ${cuts}; ${roll.leftOverText} `
    + (roll.leftOver === 'offcut' ? 'offcut' : 'scrap');
}

function cutTable(plan, order) {
  const rows = plan.rollList.flatMap((roll) => roll.cuts.map((cut) => make('tr', {},
    make('td', { class: 'num' }, `${roll.roll} · ${cut.sequence}`), make('td', {}, cut.mark),
    make('td', {}, cut.cutText), make('td', {}, cut.pieceId),
    make('td', {}, cut.orderNumber === order ? cut.state : `order ${cut.orderNumber}`))));
  return make('details', {}, make('summary', {}, 'The cuts as a table'),
    make('table', { class: 'cuts' },
      make('thead', {}, make('tr', {}, ['Roll · cut', 'Mark', 'Length', 'Piece', 'State'].map(
        (head, column) => make('th', { scope: 'col', class: column < 1 ? 'num' : null }, head)))),
      make('tbody', {}, rows)));
}
