// Small ways to make elements. Text is always set as text, never as markup.

export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    element.setAttribute(name, value === true ? '' : value);
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return element;
}

export const byId = (id) => document.getElementById(id);

/** A table from rows of cells; a cell is text, a node, or { text, num, small, span }. */
export function table(caption, heads, rows) {
  return make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': caption },
    make('table', {},
      make('caption', {}, caption),
      make('thead', {}, make('tr', {}, heads.map((head) => cell('th', head, 'col')))),
      make('tbody', {}, rows.map((row) => make('tr', {}, row.map((value) => cell('td', value)))))));
}

function cell(tag, value, scope) {
  if (value instanceof Node || typeof value !== 'object' || value === null) {
    return make(tag, { scope }, value ?? '');
  }
  return make(tag, { scope, class: value.num ? 'num' : null },
    value.text ?? '', value.small ? make('small', {}, ' ' + value.small) : null);
}

export const swatch = (kind) => make('span', { class: 'swatch ' + kind, 'aria-hidden': 'true' });

const numbers = new Map();

/** A number with a fixed count of decimals and thousands marks. */
export function shown(value, decimals = 0) {
  if (!numbers.has(decimals)) {
    numbers.set(decimals, new Intl.NumberFormat('en-US', {
      minimumFractionDigits: decimals, maximumFractionDigits: decimals,
    }));
  }
  return numbers.get(decimals).format(value);
}
