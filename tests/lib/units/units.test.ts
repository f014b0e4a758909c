import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { KIND_NAME, SI_UNIT, findUnit, fromUnit, isUnitSymbol, kindsOf, preferredUnit, si, spanFromUnit, spanToUnit, toUnit, unitsOf } from '@/lib/units';
import type { QuantityKind, UnitSymbol } from '@/lib/units';
import library from '../../independent/units/library-values.json';
import values from '../../independent/units/values.json';

const kinds = Object.keys(SI_UNIT) as QuantityKind[];
const symbols = [...new Set(kinds.flatMap((kind) => unitsOf(kind)))];

function unit(text: string): UnitSymbol {
  if (!isUnitSymbol(text)) throw new Error(`${text} is no unit of ours`);
  return text;
}

describe('units', () => {
  it('convert as the published factors say', () => {
    expect(values.conversions.length).toBeGreaterThan(5);
    const wrong = values.conversions.flatMap((row) => {
      const found = toUnit(fromUnit(row.value, unit(row.from)), unit(row.to));
      return Math.abs(found / row.is - 1) < 0.6 * 10 ** (1 - row.digits) ? [] : [`${row.value} ${row.from} = ${found} ${row.to}, published ${row.is}`];
    });
    expect(wrong).toEqual([]);
  });

  it('have the sizes that a general-purpose library gives', () => {
    const wrong = Object.entries(library.sizes).filter(([symbol, size]) => Math.abs(spanFromUnit(1, unit(symbol)) / size - 1) > 1e-14);
    expect(wrong).toEqual([]);
    const points = library.points.filter((row) => Math.abs(fromUnit(row.value, unit(row.unit)) - row.si) > 1e-10);
    expect(points).toEqual([]);
  });

  it('come back unchanged from SI, values and widths', () => {
    fc.assert(fc.property(fc.constantFrom(...symbols), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (symbol, value) => {
      const near = (found: number): boolean => Math.abs(found - value) <= 1e-9 * Math.max(1, Math.abs(value));
      return near(toUnit(fromUnit(value, symbol), symbol)) && near(spanToUnit(spanFromUnit(value, symbol), symbol));
    }));
  });

  it('grow with the value', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(fc.property(fc.constantFrom(...symbols), number, number, (symbol, a, b) => Math.sign(b - a) === Math.sign(fromUnit(b, symbol) - fromUnit(a, symbol)) || Math.abs(a - b) < 1e-9));
  });

  it('leave the zero of a scale out of a width', () => {
    expect(spanToUnit(5, '°F')).toBeCloseTo(9, 12);
    expect(spanToUnit(5, '°C')).toBe(5);
  });

  it('exist for every kind, each with a name and a preferred unit of that kind in both systems', () => {
    const wrong = kinds.filter((kind) => {
      const metric = preferredUnit(kind, 'metric');
      return unitsOf(kind)[0] !== metric || !kindsOf(metric).includes(kind) || !kindsOf(preferredUnit(kind, 'imperial')).includes(kind) || !/^an? /u.test(KIND_NAME[kind]);
    });
    expect(wrong).toEqual([]);
  });

  it('are each found by their own symbol', () => {
    const lost = kinds.flatMap((kind) => unitsOf(kind).filter((symbol) => findUnit(symbol, kind) !== symbol));
    expect(lost).toEqual([]);
  });

  const spellings: [QuantityKind, string, UnitSymbol][] = [
    ['volume-flow', 'l/min', 'L/min'], ['volume-flow', 'LPM', 'L/min'], ['volume-flow', 'lpm', 'L/min'], ['volume-flow', 'ft3/min', 'CFM'], ['volume-flow', 'cfm', 'CFM'], ['volume-flow', 'm3/h', 'm³/h'], ['volume-flow', 'm3/hr', 'm³/h'],
    ['volume-flow', 'm3/min', 'm³/min'], ['volume-flow', 'mm^3/s', 'mm³/s'], ['speed', 'fpm', 'ft/min'], ['speed', 'ft/min', 'ft/min'], ['pressure', 'mmAq', 'mmH2O'], ['pressure', 'mmH20', 'mmH2O'], ['pressure', 'mm H2O', 'mmH2O'],
    ['pressure', 'mmH₂O', 'mmH2O'], ['pressure', 'inH20', 'inH2O'], ['pressure', 'in. w.g.', 'inH2O'], ['temperature', 'C', '°C'], ['temperature', '℃', '°C'], ['temperature', 'º C', '°C'], ['temperature', 'F', '°F'], ['temperature', 'K', 'K'],
    ['temperature-difference', '°C', 'K'], ['temperature-difference', 'F', 'F°'], ['length', '"', 'in'], ['length', 'um', 'µm'], ['length', 'μm', 'µm'], ['length', 'MM', 'mm'], ['rotation-speed', 'RPM', 'rpm'], ['rotation-speed', '1/min', 'rpm'],
    ['resistance', 'kOhm', 'kΩ'], ['resistance', 'k', 'kΩ'], ['resistance', 'mΩ', 'mΩ'], ['resistance', 'MΩ', 'MΩ'], ['resistance', 'Ω', 'Ω'], ['mass', 'G', 'g'], ['ratio', 'percent', '%'], ['ratio', '', '1'], ['heat-transfer', 'W/m2K', 'W/(m²·K)'], ['angle', 'deg', '°'], ['per-length', 'steps/mm', '1/mm'],
  ];
  it('are found by what people type', () => {
    expect(spellings.filter(([kind, typed, symbol]) => findUnit(typed, kind) !== symbol).map(([kind, typed]) => `${kind} ${typed}: ${findUnit(typed, kind) ?? 'none'}`)).toEqual([]);
  });

  it('pitfall: keep m³/min and m³/h, mmH2O and inH2O, apart', () => {
    expect(fromUnit(1, 'm³/min') / fromUnit(1, 'm³/h')).toBeCloseTo(60, 9);
    expect(fromUnit(1, 'inH2O') / fromUnit(1, 'mmH2O')).toBeCloseTo(25.4, 9);
  });

  it('do not guess between milliohm and megohm', () => {
    expect(findUnit('MOHM', 'resistance')).toBeUndefined();
  });

  it('refuse NaN as a mistake of ours', () => {
    expect(() => toUnit(Number.NaN, 'mm')).toThrow('NaN');
    expect(() => si('length', Number.NaN)).toThrow('NaN');
  });
});
