// The flat map as the service draws it, with its pieces made to answer: pointed at, clicked or
// walked through with the arrow keys, a piece tells how its length came about.

import { byId, make } from './dom.js';
import { showPiece } from './answer.js';

export function showMap(answer, drawing) {
  const page = new DOMParser().parseFromString(drawing, 'image/svg+xml').documentElement;
  const svg = document.importNode(page, true);
  const pieces = new Map(answer.pieces.map((piece) => [piece.mark, piece]));
  const groups = [...svg.querySelectorAll('g')].filter((group) => {
    const name = group.querySelector('title')?.textContent ?? '';
    const mark = name.match(/: ([A-Z0-9-]+), /)?.[1];
    if (!pieces.has(mark)) return false;
    group.dataset.mark = mark;
    group.setAttribute('role', 'button');
    group.setAttribute('aria-label', name);
    group.setAttribute('tabindex', '-1');
    return true;
  });
  svg.setAttribute('role', 'group');
  const select = (group) => {
    for (const other of groups) other.setAttribute('tabindex', '-1');
    svg.querySelector('.chosen')?.classList.remove('chosen');
    group.classList.add('chosen');
    group.setAttribute('tabindex', '0');
    showPiece(pieces.get(group.dataset.mark), answer);
  };
  svg.addEventListener('click', (event) => {
    const group = event.target.closest('[data-mark]');
    if (group) select(group);
  });
  svg.addEventListener('focusin', (event) => {
    const group = event.target.closest('[data-mark]');
    if (group) select(group);
  });
  svg.addEventListener('keydown', (event) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const at = groups.indexOf(event.target.closest('[data-mark]'));
    if (!step || at < 0) return;
    event.preventDefault();
    groups[(at + step + groups.length) % groups.length].focus();
  });
  groups[0]?.setAttribute('tabindex', '0');
  byId('piece').replaceChildren(make('p', { class: 'note' },
    'Point at a piece, or walk through them with the arrow keys, to see how its length came about.'));
  byId('map').replaceChildren(svg);
}
