export { SI_UNIT, si } from './quantity';
export type { Measured, QuantityKind, Si } from './quantity';
export {
  KIND_NAME, findUnit, fromUnit, isUnitSymbol, kindsOf, preferredUnit, spanFromUnit, spanToUnit, toUnit, unitsOf,
} from './units';
export type { UnitSymbol } from './units';
export { readQuantity } from './read-quantity';
export type { QuantityField, Typed } from './read-quantity';
export { readNumber } from './read-number';
export {
  THIN_SPACE, formatMeasured, formatMinutes, formatNumber, formatPercent, formatRange, formatValue, unitSuffix,
} from './format-quantity';
export type { FormatOptions } from './format-quantity';
