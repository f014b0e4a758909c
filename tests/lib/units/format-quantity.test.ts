import { describe, expect, it } from 'vitest';
import { THIN_SPACE, formatMeasured, formatMinutes, formatNumber, formatPercent, formatRange, formatValue } from '@/lib/units';
import type { QuantityKind, UnitSymbol } from '@/lib/units';

/** Thin and wide no-break spaces as plain ones, for reading. */
const plain = (text: string): string => text.replace(/[\u202F\u00A0]/gu, ' ');

/** Value and ± in the unit, and how it is shown: the rule of the look sheet, section 3, worked by hand. */
const rows: [number, number, UnitSymbol, QuantityKind, string][] = [
  [0.3947, 0.02599, 'L/s', 'volume-flow', '0.395 ± 0.026 L/s'],
  [0.3949, 0.0317, 'L/s', 'volume-flow', '0.395 ± 0.032 L/s'],
  [3.04, 0.58, 'mm', 'length', '3.0 ± 0.6 mm'],
  [3.04, 0.41, 'mm', 'length', '3.0 ± 0.4 mm'],
  [3.04, 0.39, 'mm', 'length', '3.04 ± 0.39 mm'],
  [4551, 123, 'rpm', 'rotation-speed', '4550 ± 120 rpm'],
  [4551, 456, 'rpm', 'rotation-speed', '4600 ± 500 rpm'],
  [23_456, 12, 'rpm', 'rotation-speed', '23 456 ± 12 rpm'],
  [-0.02, 0.05, 'mm', 'length', '−0.02 ± 0.05 mm'],
  [-0.001, 0.05, 'mm', 'length', '0.00 ± 0.05 mm'],
  [50, 2, '%', 'ratio', '50.0 ± 2.0 %'],
  [12, 5, '1', 'count', '12 ± 5'],
  [31, 0, '1', 'count', '31'],
  [30, 5, '°', 'angle', '30 ± 5°'],
];

describe('formatMeasured', () => {
  it('gives value and ± the same decimals, two figures of the ± when it starts with 1, 2 or 3', () => {
    const wrong = rows.flatMap(([value, plusMinus, unit, kind, expected]) => {
      const factor = { 'L/s': 1e-3, mm: 1e-3, rpm: 1 / 60, '%': 0.01, '°': Math.PI / 180 }[unit as string] ?? 1;
      const shown = plain(formatMeasured({ kind, value: value * factor, plusMinus: plusMinus * factor }, unit));
      return shown === expected ? [] : [`${shown}, expected ${expected}`];
    });
    expect(wrong).toEqual([]);
  });

  it('keeps number, ± and unit on one line', () => {
    const shown = formatMeasured({ kind: 'ratio', value: 0.5, plusMinus: 0.05 }, '%');
    expect(shown).toBe(`50${THIN_SPACE}±${THIN_SPACE}5${THIN_SPACE}%`);
    expect(formatMeasured({ kind: 'length', value: 1, plusMinus: 0.05 }, 'mm')).not.toContain(' ');
  });

  it('leaves unit or ± out on request and calls an endless ± unknown', () => {
    const measured = { kind: 'length' as const, value: 0.00304, plusMinus: 0.00058 };
    expect(plain(formatMeasured(measured, 'mm', { unit: false }))).toBe('3.0 ± 0.6');
    expect(plain(formatMeasured(measured, 'mm', { plusMinus: false }))).toBe('3.0 mm');
    expect(plain(formatMeasured({ ...measured, plusMinus: Number.POSITIVE_INFINITY }, 'mm'))).toContain('± unknown');
  });

  it('shows a temperature ± without the zero of the scale', () => {
    expect(plain(formatMeasured({ kind: 'temperature', value: 488.15, plusMinus: 4 }, '°C'))).toBe('215 ± 4 °C');
  });
});

describe('other forms', () => {
  it('round to what can be read at a glance', () => {
    const table: [string, string][] = [
      [formatValue(0.508, 'ft/min'), '100 ft/min'], [formatValue(4.5e-5, 'mm'), '0.0450 mm'], [formatValue(24, 'V'), '24 V'], [formatNumber(1234), '1234'], [formatNumber(12_345.6), '12 346'], [formatNumber(-0.5), '−0.500'], [formatNumber(0), '0'], [formatNumber(Infinity), '∞'],
      [formatRange(0.00045, 0.00052, 'L/s'), '0.450–0.520 L/s'], [formatRange(0.71, 0.44, '%'), '44–71 %'], [formatRange(-0.001, 0.002, 'mm'), '−1.0 to 2.0 mm'],
      [formatPercent(0.58), '58 %'], [formatPercent(0.001), 'under 1 %'], [formatPercent(0.9999), 'over 99 %'], [formatPercent(1), '100 %'], [formatPercent(0), '0 %'], [formatPercent(-0.082, 1), '−8.2 %'],
      [formatMinutes(6), '6 min'], [formatMinutes(112), '1 h 52'], [formatMinutes(120), '2 h'], [formatMinutes(59.7), '1 h'], [formatMinutes(65), '1 h 05'], [formatMinutes(0.2), 'under 1 min'], [formatMinutes(0), '0 min'],
    ];
    expect(table.filter(([shown, expected]) => plain(shown) !== expected).map(([shown, expected]) => `${plain(shown)}, expected ${expected}`)).toEqual([]);
    expect(() => formatMinutes(-1)).toThrow('0 or more');
  });

  it('rounds a range to the size of its larger end and of what its quantity can tell, and shows no crumbs of the reckoning', () => {
    const table: [string, string][] = [
      // Differences of like pressures leave 1e-15 of them: nothing at all.
      [formatRange(-6e-15, 6e-15, 'Pa'), '0 Pa'], [formatRange(-2.3e-15, 12.4, 'Pa'), '0–12 Pa'], [formatRange(1e-19, 2e-19, 'L/s'), '0 L/s'],
      // Two ends that are one figure are written as one; 0.3 − 0.1 is 0.19999999999999998.
      [formatRange(1, 1, '%'), '100 %'], [formatRange(1 - 2e-16, 1, '%'), '100 %'], [formatRange(0.3 - 0.1, 0.2, 'm/s'), '0.200 m/s'],
      // What a calliper, a thermometer or a scale tells stays: 0.01 mm of 100 mm, 0.07 K, 2 mg.
      [formatRange(0.09996, 0.10005, 'mm'), '99.960–100.050 mm'], [formatRange(488.2, 488.27, '°C'), '215.050–215.120 °C'], [formatRange(2e-6, 4e-6, 'mg'), '2.0–4.0 mg'],
      [formatRange(Infinity, 1, 'm/s'), '1–∞ m/s'],
      // The freezing point as it comes out of a sum in kelvins: 273.15000000000003.
      [formatValue(273.15 + 3e-14, '°C'), '0 °C'], [formatValue(-4e-15, 'Pa'), '0 Pa'], [formatMeasured({ kind: 'pressure', value: 12, plusMinus: 3e-15 }, 'Pa'), '12 Pa'],
    ];
    expect(table.filter(([shown, expected]) => plain(shown) !== expected).map(([shown, expected]) => `${plain(shown)}, expected ${expected}`)).toEqual([]);
  });
});
