/** An air-path file as it is being written: every entry is the text that somebody typed. */
export type Sheet = Readonly<Record<string, unknown>>;

export type Place = readonly (string | number)[];

/** A sheet to begin with: two outlets, everything else unknown. What is not known gets a usual value with wide limits. */
export const EMPTY_SHEET: Sheet = {
  schema: 'leeward/air-path', version: 1, title: 'Air path',
  fan: { kind: 'blower' }, duct: {},
  outlets: [{ name: 'left', direction: '180°' }, { name: 'right', direction: '0°' }],
  leaks: [], print: { polymer: 'PLA' }, candidates: [], measured: [],
};

/** The invented machine of the demo: a greenhouse hinge printed in a tool library. */
export const DEMO_SHEET: Sheet = {
  ...EMPTY_SHEET, title: 'Air path of machine no. 3',
  fan: { name: 'part fan, 40 × 10 radial, 24 V', kind: 'blower', frame: '40 x 10', claim: 'measured', voltage: '24 V', current: '0.06 A', freeFlow: '0.72 ± 0.12 L/s', maxPressure: '118 ± 30 Pa' },
  duct: { section: { width: '26 mm', height: '7 mm' }, length: '18 mm' },
  outlets: [
    { name: 'left', direction: '180°', width: '14 mm', height: '3 mm', ending: 'land', distance: '15 mm', tilt: '25°', branch: { section: { width: '10 mm', height: '7 mm' }, length: '58 mm', bends: [{ kind: 'mitre', angle: '90°' }, { kind: 'mitre', angle: '90°' }, { kind: 'mitre', angle: '90°' }] } },
    { name: 'right', direction: '0°', width: '14 mm', height: '3 mm', ending: 'land', distance: '15 mm', tilt: '25°', branch: { section: { width: '12 mm', height: '7 mm' }, length: '24 mm', bends: [{ kind: 'radius', angle: '90°', radius: '12 mm' }] } },
  ],
  print: { polymer: 'PLA', layerTime: '12 s', layerHeight: '0.2 mm', lineWidth: '0.45 mm', nozzleTemperature: '210 °C', chamberTemperature: '28 °C' },
  candidates: [
    { name: '50 × 15 radial, 24 V', price: 9, hands: '40 min', fan: { kind: 'blower', frame: '50 x 15', claim: 'advertised', voltage: '24 V', current: '0.13 A', speed: '6000 rpm', freeFlow: '4.8 CFM' } },
  ],
};

/** The text at a place of the sheet; empty when nothing stands there. */
export function textAt(sheet: unknown, place: Place): string {
  const found = place.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined), sheet);
  return typeof found === 'string' ? found : typeof found === 'number' ? String(found) : '';
}

/** The rows of a list in the sheet. */
export function rowsAt(sheet: unknown, place: Place): readonly unknown[] {
  const found = place.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined), sheet);
  return Array.isArray(found) ? (found as unknown[]) : [];
}

/** The sheet with a value put at a place; an empty text takes the entry out, so that it counts as not known. */
export function withAt<T>(sheet: T, place: Place, value: unknown): T {
  const [key, ...rest] = place;
  if (key === undefined) return value as T;
  if (Array.isArray(sheet)) {
    const list = sheet as readonly unknown[];
    return [...list.slice(0, Number(key)), withAt(list[Number(key)], rest, value), ...list.slice(Number(key) + 1)] as T;
  }
  const record: Record<string, unknown> = { ...(typeof sheet === 'object' ? sheet : {}) };
  const next = withAt(record[key], rest, value);
  if (next === '' || next === undefined) Reflect.deleteProperty(record, key);
  else record[key] = next;
  return record as T;
}
