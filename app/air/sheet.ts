/** An air-path file as it is being written: every entry is the text that somebody typed. */
export type Sheet = Readonly<Record<string, unknown>>;

export type Place = readonly (string | number)[];

/** A sheet to begin with: two outlets, everything else unknown. What is not known gets a usual value with wide limits. */
export const EMPTY_SHEET: Sheet = {
  schema: 'leeward/air-path', version: 1, title: 'Air path',
  fan: { kind: 'blower' }, duct: {},
  outlets: [{ name: 'left', direction: '180°' }, { name: 'right', direction: '0°' }],
  print: { polymer: 'PLA' }, candidates: [], measured: [],
};

/**
 * The invented machine of the demo: a greenhouse hinge printed in a tool library. The same, entry by entry, as the file that the README
 * names and the tests reckon with; `tests/app/air/sheet.test.ts` holds the two together.
 */
export const DEMO_SHEET: Sheet = {
  schema: 'leeward/air-path', version: 1, title: 'Air path of machine no. 3', currency: '€',
  air: { temperature: '24 °C', pressure: '1008 hPa', humidity: '55 %' },
  fan: {
    name: 'part fan, 40 × 10 radial, 24 V', kind: 'blower', frame: '40 x 10', claim: 'measured', voltage: '24 V', current: '0.06 A', speed: '6000 rpm',
    freeFlow: '0.72 ± 0.12 L/s', maxPressure: '118 ± 30 Pa', outlet: { width: '27.8 ± 0.3 mm', height: '6.5 ± 0.2 mm' },
  },
  duct: { mode: 'total', section: { width: '26 mm', height: '7 mm' }, length: '18 mm' },
  outlets: [
    {
      name: 'left', direction: '180°', width: '14 mm', height: '3 mm', ending: 'land', tilt: '25°', distance: '15 mm', aimError: '8°',
      branch: { section: { width: '9 mm', height: '5 mm' }, length: '58 mm', bends: [{ kind: 'mitre', angle: '90°' }, { kind: 'mitre', angle: '90°' }, { kind: 'mitre', angle: '90°' }] },
    },
    {
      name: 'right', direction: '0°', width: '14 mm', height: '3 mm', ending: 'land', tilt: '25°', distance: '15 mm', aimError: '5°',
      branch: { section: { width: '12 mm', height: '7 mm' }, length: '24 mm', bends: [{ kind: 'radius', angle: '90°', radius: '12 mm' }] },
    },
  ],
  leaks: [{ name: 'seam between fan and duct', at: 'fan', length: '22 mm', gap: '0.3 mm' }],
  print: {
    polymer: 'PLA', layerTime: '11 s', layerHeight: '0.2 mm', lineWidth: '0.45 mm', nozzleTemperature: '210 °C', chamberTemperature: '26 °C', layers: 110,
    sides: [{ direction: '180°', held: false }, { direction: '0°', held: true }],
  },
  candidates: [
    {
      name: '50 × 15 radial, 24 V', price: 9, hands: '40 min',
      fan: {
        kind: 'blower', frame: '50 x 15', claim: 'advertised', voltage: '24 V', current: '0,10 A', speed: '6000 rpm', freeFlow: '5.36 CFM',
        outlet: { width: '20 mm', height: '12.2 mm' },
      },
      trusted: { freeFlow: '5 CFM', speed: '6500 rpm', voltage: '24 V', current: '0.18 A' },
    },
    {
      name: 'even fork', price: 2, hands: '25 min', printing: '190 min',
      duct: { mode: 'total', section: { width: '26 mm', height: '7 mm' }, length: '20 mm' },
      outlets: [evenOutlet('left', '180°'), evenOutlet('right', '0°')],
    },
  ],
  measured: [
    { what: 'flow-in-duct', value: '0.395 ± 0.032 L/s' },
    { what: 'outlet-speed', at: 'left', value: '3.0 ± 0.6 m/s' },
    { what: 'outlet-speed', at: 'right', value: '6.4 ± 0.8 m/s' },
  ],
  output: { voltage: '24 V', currentLimit: '0.5 A', drive: 'switched-low-side', wireGauge: 26, wireLength: '0.6 m' },
};

/** One side of the even fork that is compared in the demo. */
function evenOutlet(name: string, direction: string): object {
  return {
    name, direction, width: '14 mm', height: '4 mm', ending: 'tapered', tilt: '25°', distance: '13 mm', aimError: '3°',
    branch: { section: { width: '13 mm', height: '8 mm' }, length: '40 mm', bends: [{ kind: 'radius', angle: '90°', radius: '12 mm' }] },
  };
}

/** Whatever stands at a place of the sheet; undefined when nothing does. */
export function valueAt(sheet: unknown, place: Place): unknown {
  return place.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined), sheet);
}

/** The text at a place of the sheet; empty when nothing stands there. */
export function textAt(sheet: unknown, place: Place): string {
  const found = valueAt(sheet, place);
  return typeof found === 'string' ? found : typeof found === 'number' ? String(found) : '';
}

/** The rows of a list in the sheet. */
export function rowsAt(sheet: unknown, place: Place): readonly unknown[] {
  const found = valueAt(sheet, place);
  return Array.isArray(found) ? (found as unknown[]) : [];
}

/** Parts that stay in the sheet when their last entry goes: a fan on offer is a fan even while nothing is known of it. */
const STAY: ReadonlySet<string> = new Set(['fan', 'duct', 'second']);

/** The sheet with a value put at a place; an empty text takes the entry out, and with it a part that holds nothing more: not known. */
export function withAt<T>(sheet: T, place: Place, value: unknown): T {
  const [key, ...rest] = place;
  if (key === undefined) return value as T;
  if (Array.isArray(sheet) || (sheet === undefined && typeof key === 'number')) {
    const list = (sheet ?? []) as readonly unknown[];
    return [...list.slice(0, Number(key)), withAt(list[Number(key)], rest, value), ...list.slice(Number(key) + 1)] as T;
  }
  const record: Record<string, unknown> = { ...(typeof sheet === 'object' ? sheet : {}) };
  const next = withAt(record[key], rest, value);
  if (next === '' || next === undefined || (isBare(next) && !STAY.has(String(key)))) Reflect.deleteProperty(record, key);
  else record[key] = next;
  return record as T;
}

const isBare = (value: unknown): boolean => typeof value === 'object' && value !== null && !Array.isArray(value) && Object.keys(value).length === 0;
