// Amounts as the job reads them: a metric job metric throughout, a US job in US units.
// Factors are exact (international foot and pound, 1959); R and U by the IT calorie's Btu.

import { shown } from './dom.js';

let isMetric = false;

export const setUnits = (units) => { isMetric = units === 'metric'; };

export const inMetric = () => isMetric;

const factors = {
  ft: [0.3048, 'm'], 'ft²': [0.09290304, 'm²'], 'ft³': [0.028316846592, 'm³'],
  lb: [0.45359237, 'kg'], R: [1 / 5.678263337, 'm²·K/W'], U: [5.678263337, 'W/(m²·K)'],
};

/** [number, unit] of an amount that goes over the wire in US units. */
export function amount(value, unit, decimals = 0, metricDecimals = decimals) {
  if (!isMetric) return [shown(value, decimals), unit];
  const [factor, metricUnit] = factors[unit];
  return [shown(value * factor, metricDecimals), metricUnit];
}

export const amountText = (...of) => amount(...of).join(' ');

/** The wire's units are plurals: "4 rolls", but "1 roll"; "12 board feet", but "1 board foot". */
export function counted(quantity, unit, decimals = 0) {
  const one = quantity === 1;
  const word = one ? unit.replace(/feet$/, 'foot').replace(/(?<=[a-z])s$/, '') : unit;
  return `${shown(quantity, Number.isInteger(quantity) ? 0 : decimals)} ${word}`;
}
