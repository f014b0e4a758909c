/** Every kind of quantity that Leeward reads, computes or shows, with the SI unit it is held in. */
export const SI_UNIT = {
  length: 'm',
  area: 'm²',
  volume: 'm³',
  time: 's',
  speed: 'm/s',
  acceleration: 'm/s²',
  'volume-flow': 'm³/s',
  pressure: 'Pa',
  temperature: 'K',
  'temperature-difference': 'K',
  mass: 'kg',
  force: 'N',
  'rotation-speed': '1/s',
  frequency: 'Hz',
  voltage: 'V',
  current: 'A',
  resistance: 'Ω',
  power: 'W',
  angle: 'rad',
  'heat-transfer': 'W/(m²·K)',
  density: 'kg/m³',
  'linear-density': 'kg/m',
  'per-length': '1/m',
  ratio: '1',
  count: '1',
} as const;

export type QuantityKind = keyof typeof SI_UNIT;

declare const kindOf: unique symbol;

/** A plain number in the SI unit of its kind; the brand keeps a pressure from being passed as a flow. */
export type Si<K extends QuantityKind> = number & { readonly [kindOf]: K };

/** Marks a number that is already in the SI unit of `kind`. The only cast; used at the gates and for constants. */
export function si<K extends QuantityKind>(kind: K, value: number): Si<K> {
  if (Number.isNaN(value)) throw new Error(`si(${kind}): got NaN, expected a number in ${SI_UNIT[kind]}`);
  return value as Si<K>;
}

/** A value with its 95 % expanded uncertainty, both in the SI unit of the kind. */
export interface Measured<K extends QuantityKind = QuantityKind> {
  readonly kind: K;
  readonly value: number;
  /** Half-width of the 95 % interval; 0 only when exact by definition. */
  readonly plusMinus: number;
}
