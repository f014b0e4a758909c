import type { QuantityKind } from './quantity';

/**
 * One unit that people type or read. `value in SI = value × factor + offset`.
 *
 * A symbol always means one conversion, whichever kind it serves; degrees that count a difference therefore have a
 * symbol of their own (`F°`), and a difference in degrees Celsius is held as kelvins.
 */
interface UnitFacts {
  readonly kinds: readonly QuantityKind[];
  readonly factor: number;
  readonly offset?: number;
  /** What people type besides the symbol. Spaces, superscripts and letter case are evened out before comparing. */
  readonly spellings: readonly string[];
}

/*
 * Exact factors of the foot, inch, pound, gallon and standard gravity: NIST SP 811 (2008), appendix B; quoted from the
 * air sheet, section 1. Water columns are the conventional ones (1000 kg/m³, 9.80665 m/s²).
 */
const INCH = 0.0254;
const FOOT = 12 * INCH;
const POUND = 0.45359237;
const STANDARD_GRAVITY = 9.80665;
const LITRE = 1e-3;
const US_GALLON = 231 * INCH ** 3;

function unit(kinds: QuantityKind | readonly QuantityKind[], factor: number, ...spellings: string[]): UnitFacts {
  return { kinds: typeof kinds === 'string' ? [kinds] : kinds, factor, spellings };
}

const TABLE = {
  mm: unit('length', 1e-3, 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'mms'),
  cm: unit('length', 1e-2, 'centimetre', 'centimetres', 'centimeter', 'centimeters'),
  m: unit('length', 1, 'metre', 'metres', 'meter', 'meters', 'mtr'),
  µm: unit('length', 1e-6, 'um', 'micron', 'microns', 'micrometre', 'micrometer'),
  in: unit('length', INCH, '"', '″', "''", '”', 'inch', 'inches'),
  ft: unit('length', FOOT, "'", '′', 'foot', 'feet'),

  'mm²': unit('area', 1e-6, 'mm2', 'mm^2', 'sqmm', 'sq mm', 'square mm'),
  'cm²': unit('area', 1e-4, 'cm2', 'cm^2', 'sqcm', 'sq cm', 'square cm'),
  'm²': unit('area', 1, 'm2', 'm^2', 'sqm', 'sq m', 'square m'),
  'in²': unit('area', INCH ** 2, 'in2', 'in^2', 'sqin', 'sq in', 'square inch', 'square inches'),

  L: unit('volume', LITRE, 'l', 'ℓ', 'ltr', 'litre', 'litres', 'liter', 'liters', 'dm3', 'dm^3'),
  mL: unit('volume', 1e-6, 'ml', 'millilitre', 'milliliter', 'cm3', 'cm^3', 'cc'),
  'mm³': unit('volume', 1e-9, 'mm3', 'mm^3'),
  'm³': unit('volume', 1, 'm3', 'm^3', 'cubic metre', 'cubic meter'),
  'ft³': unit('volume', FOOT ** 3, 'ft3', 'ft^3', 'cuft', 'cu ft', 'cubic feet', 'cubic foot'),
  gal: unit('volume', US_GALLON, 'gallon', 'gallons', 'us gal', 'usgal'),

  s: unit('time', 1, 'sec', 'secs', 'second', 'seconds'),
  ms: unit('time', 1e-3, 'msec', 'millisecond', 'milliseconds'),
  min: unit('time', 60, 'mins', 'minute', 'minutes'),
  h: unit('time', 3600, 'hr', 'hrs', 'hour', 'hours'),

  'm/s': unit('speed', 1, 'mps', 'm/sec', 'm s-1', 'metres per second', 'meters per second'),
  'mm/s': unit('speed', 1e-3, 'mm/sec', 'mm s-1'),
  'mm/min': unit('speed', 1e-3 / 60),
  'km/h': unit('speed', 1 / 3.6, 'kph', 'kmh', 'km/hr'),
  'ft/min': unit('speed', FOOT / 60, 'fpm', 'feet per minute'),
  'in/s': unit('speed', INCH, 'ips', 'in/sec'),

  'mm/s²': unit('acceleration', 1e-3, 'mm/s2', 'mm/s^2', 'mm/sec2', 'mm/sec^2'),
  'm/s²': unit('acceleration', 1, 'm/s2', 'm/s^2'),

  'L/min': unit('volume-flow', LITRE / 60, 'l/min', 'lpm', 'l/m', 'ltr/min', 'liters per minute', 'litres per minute', 'slpm'),
  'L/s': unit('volume-flow', LITRE, 'l/s', 'lps', 'l/sec'),
  'm³/h': unit('volume-flow', 1 / 3600, 'm3/h', 'm^3/h', 'm3/hr', 'm³/hr', 'cmh', 'cbm/h', 'cubic metres per hour'),
  'm³/min': unit('volume-flow', 1 / 60, 'm3/min', 'm^3/min', 'cmm'),
  'm³/s': unit('volume-flow', 1, 'm3/s', 'm^3/s'),
  CFM: unit('volume-flow', FOOT ** 3 / 60, 'cfm', 'ft3/min', 'ft^3/min', 'ft³/min', 'cu ft/min', 'cuft/min', 'cubic feet per minute'),
  'mm³/s': unit('volume-flow', 1e-9, 'mm3/s', 'mm^3/s', 'mm3/sec', 'cmm/s'),

  Pa: unit('pressure', 1, 'pascal', 'pascals', 'n/m2', 'n/m²'),
  hPa: unit('pressure', 100, 'mbar', 'millibar'),
  kPa: unit('pressure', 1000),
  bar: unit('pressure', 1e5),
  mmH2O: unit('pressure', STANDARD_GRAVITY, 'mmH₂O', 'mmH20', 'mm h2o', 'mmAq', 'mmWC', 'mmWG', 'mm water', 'mmCE'),
  inH2O: unit('pressure', 25.4 * STANDARD_GRAVITY, 'inH₂O', 'inH20', 'in h2o', 'inWC', 'inWG', 'inAq', '"H2O', 'iwc', 'in water', '"wc', '"wg'),
  psi: unit('pressure', (POUND * STANDARD_GRAVITY) / INCH ** 2, 'lbf/in2', 'lb/in2'),

  '°C': { ...unit('temperature', 1, 'C', 'degC', 'deg C', 'celsius', 'degrees C', 'degrees celsius', '℃', 'ºC', '˚C'), offset: 273.15 },
  '°F': { ...unit('temperature', 5 / 9, 'F', 'degF', 'deg F', 'fahrenheit', 'degrees F', '℉', 'ºF', '˚F'), offset: 459.67 * (5 / 9) },
  K: unit(['temperature', 'temperature-difference'], 1, 'kelvin', 'kelvins', 'degK'),
  'F°': unit('temperature-difference', 5 / 9, 'F', '°F', 'degF', 'deg F', '℉', 'fahrenheit'),

  g: unit('mass', 1e-3, 'gr', 'gram', 'grams', 'gramme'),
  mg: unit('mass', 1e-6, 'milligram', 'milligrams'),
  kg: unit('mass', 1, 'kilo', 'kilos', 'kilogram', 'kilograms'),
  oz: unit('mass', POUND / 16, 'ounce', 'ounces'),
  lb: unit('mass', POUND, 'lbs', 'pound', 'pounds'),

  N: unit('force', 1, 'newton', 'newtons'),
  mN: unit('force', 1e-3, 'millinewton'),
  gf: unit('force', 1e-3 * STANDARD_GRAVITY, 'gram-force', 'grams-force', 'pond'),
  kgf: unit('force', STANDARD_GRAVITY, 'kilogram-force', 'kp'),
  lbf: unit('force', POUND * STANDARD_GRAVITY, 'pound-force', 'lb-f'),

  rpm: unit('rotation-speed', 1 / 60, 'r/min', 'rev/min', '1/min', 'U/min', 'min-1', 'turns/min', 'turns per minute'),
  '1/s': unit('rotation-speed', 1, 'rps', 'r/s', 'rev/s', 'turns/s'),

  Hz: unit('frequency', 1, 'hertz', 'cps', 's-1'),
  kHz: unit('frequency', 1000, 'kilohertz'),

  V: unit('voltage', 1, 'volt', 'volts', 'vdc', 'v dc'),
  mV: unit('voltage', 1e-3, 'millivolt', 'millivolts'),
  A: unit('current', 1, 'amp', 'amps', 'ampere', 'amperes'),
  mA: unit('current', 1e-3, 'milliamp', 'milliamps'),
  Ω: unit('resistance', 1, 'Ω', 'ohm', 'ohms', 'R'),
  mΩ: unit('resistance', 1e-3, 'mΩ', 'mohm', 'milliohm', 'milliohms'),
  kΩ: unit('resistance', 1e3, 'kΩ', 'kohm', 'kohms', 'k', 'kiloohm'),
  MΩ: unit('resistance', 1e6, 'MΩ', 'Mohm', 'megohm'),
  W: unit('power', 1, 'watt', 'watts'),
  mW: unit('power', 1e-3, 'milliwatt'),
  kW: unit('power', 1e3, 'kilowatt'),

  '°': unit('angle', Math.PI / 180, 'deg', 'degree', 'degrees', 'º', '˚'),
  rad: unit('angle', 1, 'radian', 'radians'),

  'W/(m²·K)': unit('heat-transfer', 1, 'W/m2K', 'W/m²K', 'W/(m2K)', 'W/(m²K)', 'W/m2/K', 'W/(m2*K)', 'W/m^2K'),
  'kg/m³': unit('density', 1, 'kg/m3', 'kg/m^3'),
  'g/cm³': unit('density', 1000, 'g/cm3', 'g/cm^3', 'g/cc', 'g/mL'),
  'kg/m': unit('linear-density', 1),
  'g/m': unit('linear-density', 1e-3, 'g per m', 'grams per metre'),
  '1/mm': unit('per-length', 1000, '/mm', 'per mm', 'steps/mm', 'step/mm'),
  '1/m': unit('per-length', 1, '/m', 'per m'),

  '%': unit('ratio', 1e-2, 'percent', 'per cent', 'pct'),
  '1': unit(['ratio', 'count'], 1, '', 'x', '×', 'times'),
} as const satisfies Record<string, UnitFacts>;

/** Symbol of a known unit, as it is shown: `L/min`, `°C`, `mm³/s`. */
export type UnitSymbol = keyof typeof TABLE;

/** What a person calls each kind, with its article where one is needed: `a volume flow`. */
export const KIND_NAME: Readonly<Record<QuantityKind, string>> = {
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  time: 'a time',
  speed: 'a speed',
  acceleration: 'an acceleration',
  'volume-flow': 'a volume flow',
  pressure: 'a pressure',
  temperature: 'a temperature',
  'temperature-difference': 'a temperature difference',
  mass: 'a mass',
  force: 'a force',
  'rotation-speed': 'a rotation speed',
  frequency: 'a frequency',
  voltage: 'a voltage',
  current: 'a current',
  resistance: 'a resistance',
  power: 'a power',
  angle: 'an angle',
  'heat-transfer': 'a heat transfer coefficient',
  density: 'a density',
  'linear-density': 'a mass per length',
  'per-length': 'a number per length',
  ratio: 'a ratio',
  count: 'a count',
};

/** Unit to show first, metric and imperial. Electrical, angle and line-volume units are the same in both. */
const PREFERRED: Readonly<Record<QuantityKind, readonly [metric: UnitSymbol, imperial: UnitSymbol]>> = {
  length: ['mm', 'in'],
  area: ['mm²', 'in²'],
  volume: ['L', 'ft³'],
  time: ['s', 's'],
  speed: ['m/s', 'ft/min'],
  acceleration: ['mm/s²', 'mm/s²'],
  'volume-flow': ['L/min', 'CFM'],
  pressure: ['Pa', 'inH2O'],
  temperature: ['°C', '°F'],
  'temperature-difference': ['K', 'F°'],
  mass: ['g', 'oz'],
  force: ['N', 'lbf'],
  'rotation-speed': ['rpm', 'rpm'],
  frequency: ['Hz', 'Hz'],
  voltage: ['V', 'V'],
  current: ['A', 'A'],
  resistance: ['Ω', 'Ω'],
  power: ['W', 'W'],
  angle: ['°', '°'],
  'heat-transfer': ['W/(m²·K)', 'W/(m²·K)'],
  density: ['g/cm³', 'g/cm³'],
  'linear-density': ['g/m', 'g/m'],
  'per-length': ['1/mm', '1/mm'],
  ratio: ['%', '%'],
  count: ['1', '1'],
};

const SYMBOLS = Object.keys(TABLE) as UnitSymbol[];

/**
 * Converts a value in the SI unit of its kind to `unit`. `toUnit(4.719474432e-4, 'CFM')` is 1. Factors: NIST SP 811
 * (2008). Any finite or infinite number; NaN throws.
 */
export function toUnit(valueSi: number, unit: UnitSymbol): number {
  const { factor, offset = 0 }: UnitFacts = TABLE[unit];
  return (checked(valueSi) - offset) / factor;
}

/** Converts a value in `unit` to the SI unit of its kind. `fromUnit(100, 'ft/min')` is 0.508 m/s. NaN throws. */
export function fromUnit(value: number, unit: UnitSymbol): number {
  const { factor, offset = 0 }: UnitFacts = TABLE[unit];
  return checked(value) * factor + offset;
}

/**
 * Converts a width (an uncertainty, a tolerance) from SI to `unit`: the zero point of a temperature scale does not
 * enter. `spanToUnit(5, '°F')` is 9.
 */
export function spanToUnit(widthSi: number, unit: UnitSymbol): number {
  return checked(widthSi) / TABLE[unit].factor;
}

/** Converts a width in `unit` to SI. `spanFromUnit(9, '°F')` is 5 K. */
export function spanFromUnit(width: number, unit: UnitSymbol): number {
  return checked(width) * TABLE[unit].factor;
}

/** Units that can be typed for a kind, preferred metric one first. `unitsOf('time')` is s, ms, min, h. */
export function unitsOf(kind: QuantityKind): readonly UnitSymbol[] {
  const preferred = preferredUnit(kind, 'metric');
  const rest = SYMBOLS.filter((symbol) => symbol !== preferred && serves(symbol, kind));
  return [preferred, ...rest];
}

/** The unit to show for a kind. `preferredUnit('volume-flow', 'imperial')` is CFM. */
export function preferredUnit(kind: QuantityKind, system: 'metric' | 'imperial'): UnitSymbol {
  const [metric, imperial] = PREFERRED[kind];
  return system === 'metric' ? metric : imperial;
}

/** Kinds that a unit can measure: K serves temperatures and temperature differences. */
export function kindsOf(unit: UnitSymbol): readonly QuantityKind[] {
  return TABLE[unit].kinds;
}

/** True when the text is exactly a known symbol; use `findUnit` for what people type. */
export function isUnitSymbol(text: string): text is UnitSymbol {
  return Object.hasOwn(TABLE, text);
}

/**
 * The unit that a typed word means within a kind, or undefined. The right letter case wins where it matters (mΩ, MΩ);
 * otherwise case is ignored. `findUnit('ft3/min', 'volume-flow')` is CFM.
 */
export function findUnit(typed: string, kind: QuantityKind): UnitSymbol | undefined {
  const key = spellingKey(typed);
  const { exact, loose } = spelledOf(kind);
  const found = exact.get(key);
  if (found !== undefined) return found;
  const alike = loose.get(key.toLowerCase());
  return alike?.size === 1 ? [...alike][0] : undefined;
}

/** Every spelling known for a kind, for finding the nearest one to a typing slip. */
export function spellingsOf(kind: QuantityKind): readonly { readonly typed: string; readonly unit: UnitSymbol }[] {
  return unitsOf(kind).flatMap((symbol) => [symbol, ...TABLE[symbol].spellings].map((typed) => ({ typed, unit: symbol })));
}

/** Kinds for which the typed word is a unit, to say what it is when it does not fit. */
export function kindsSpelled(typed: string): readonly QuantityKind[] {
  if (spellingKey(typed) === '') return [];
  return (Object.keys(PREFERRED) as QuantityKind[]).filter((kind) => findUnit(typed, kind) !== undefined);
}

function serves(symbol: UnitSymbol, kind: QuantityKind): boolean {
  return kindsOf(symbol).includes(kind);
}

interface Spelled {
  /** First unit that is written so. */
  readonly exact: ReadonlyMap<string, UnitSymbol>;
  /** All units that are written so when letter case is ignored. */
  readonly loose: ReadonlyMap<string, ReadonlySet<UnitSymbol>>;
}

/* Reading a sheet asks for units some hundred times; evening out every spelling anew each time took most of it. */
const spelled = new Map<QuantityKind, Spelled>();

function spelledOf(kind: QuantityKind): Spelled {
  const known = spelled.get(kind);
  if (known) return known;
  const exact = new Map<string, UnitSymbol>();
  const loose = new Map<string, Set<UnitSymbol>>();
  for (const symbol of SYMBOLS.filter((each) => serves(each, kind))) {
    for (const key of keysOf(symbol, kind)) {
      if (!exact.has(key)) exact.set(key, symbol);
      loose.set(key.toLowerCase(), (loose.get(key.toLowerCase()) ?? new Set<UnitSymbol>()).add(symbol));
    }
  }
  const made = { exact, loose };
  spelled.set(kind, made);
  return made;
}

/** Degrees Celsius typed for a difference mean kelvins: the size of the degree is the same. */
const CELSIUS_STEPS = ['C', '°C', 'degC', 'deg C', '℃', 'ºC', 'celsius', 'C°'];

function keysOf(symbol: UnitSymbol, kind: QuantityKind): readonly string[] {
  const spellings: readonly string[] = TABLE[symbol].spellings;
  const steps = symbol === 'K' && kind === 'temperature-difference' ? CELSIUS_STEPS : [];
  return [symbol, ...spellings, ...steps].map(spellingKey);
}

/** Compatibility form evens out ², ₂, ℃, µ against μ and the ohm sign; spaces, points and dots carry no meaning. */
function spellingKey(typed: string): string {
  return typed
    .normalize('NFKC')
    .replace(/[\s.·⋅*^()]/gu, '')
    .replace(/[º˚]/gu, '°')
    .replace(/⁄|∕/gu, '/')
    .replace(/^1\//u, '/');
}

function checked(value: number): number {
  if (Number.isNaN(value)) throw new Error('unit conversion: got NaN, expected a number');
  return value;
}
