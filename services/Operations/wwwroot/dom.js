// Small ways to make elements. Text is always set as text, never as markup.

export function make(tag, attributes = {}, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

export function draw(tag, attributes = {}, ...children) {
  return fill(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);
}

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    element.setAttribute(name, value === true ? '' : value);
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return element;
}

export const byId = (id) => document.getElementById(id);

/** Sets a text only where it differs, so that nothing is read out or selected away for nothing. */
export function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** A link to one of our services only: an address of any other kind is shown as text. */
export function link(address, text, more = {}) {
  return /^(\/(?!\/)|https?:\/\/)/.test(address ?? '')
    ? make('a', { href: address, ...more }, text)
    : make('span', {}, text);
}
