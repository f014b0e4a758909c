import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { formatMeasured, readNumber, readQuantity, spanToUnit, toUnit } from '@/lib/units';
import type { QuantityField, QuantityKind, UnitSymbol } from '@/lib/units';

/** Text, kind, value and ± in the unit named; ± undefined where none was typed. */
const good: [string, QuantityKind, UnitSymbol, number, number | undefined, QuantityField?][] = [
  ['6.0 ± 0.3 L', 'volume', 'L', 6, 0.3],
  ['6,0 ± 0,3 L', 'volume', 'L', 6, 0.3],
  ['6.0 +/- 0.3 L', 'volume', 'L', 6, 0.3],
  ['6.0+-0.3L', 'volume', 'L', 6, 0.3],
  ['6.0 ± 0.3 L', 'volume', 'L', 6, 0.3],
  ['6 L ± 5 %', 'volume', 'L', 6, 0.3],
  ['6 L ± 5%', 'volume', 'L', 6, 0.3],
  ['6 ± 5 %', 'volume', 'L', 6, 0.3, { unit: 'L' }],
  ['6 L ± 300 mL', 'volume', 'L', 6, 0.3],
  ['6 L ± 0.3', 'volume', 'L', 6, 0.3],
  ['(6.0 ± 0.3) L', 'volume', 'L', 6, 0.3],
  ['(50 ± 2) %', 'ratio', '%', 50, 2],
  ['50 ± 2 %', 'ratio', '%', 50, 2],
  ['0.75', 'ratio', '1', 0.75, undefined],
  ['  6  L ', 'volume', 'L', 6, undefined],
  ['1 234 rpm', 'rotation-speed', 'rpm', 1234, undefined],
  ['1 234 rpm', 'rotation-speed', 'rpm', 1234, undefined],
  ['1500 1/min', 'rotation-speed', 'rpm', 1500, undefined],
  ['1.234,5 mm', 'length', 'mm', 1234.5, undefined],
  ['1,234.5 mm', 'length', 'mm', 1234.5, undefined],
  ["1'234.5 mm", 'length', 'mm', 1234.5, undefined],
  ['.4 mm', 'length', 'mm', 0.4, undefined],
  ['0.4', 'length', 'mm', 0.4, undefined, { unit: 'mm' }],
  ['−5 °C', 'temperature', '°C', -5, undefined],
  ['-5C', 'temperature', '°C', -5, undefined],
  ['23 ± 1 °F', 'temperature', '°F', 23, 1],
  ['−0.8 mm', 'length', 'mm', -0.8, undefined, { min: -1 }],
  ['5 °C', 'temperature-difference', 'K', 5, undefined],
  ['2.2e-3 m', 'length', 'm', 0.0022, undefined],
  ['1.2×10^-3 m', 'length', 'm', 0.0012, undefined],
  ['1.2 x 10⁻³ m', 'length', 'm', 0.0012, undefined],
  ['10 mm H2O', 'pressure', 'mmH2O', 10, undefined],
  ['0.26 inH2O', 'pressure', 'inH2O', 0.26, undefined],
  ['3,8 ft³/min', 'volume-flow', 'CFM', 3.8, undefined],
  ['4.7 kOhm', 'resistance', 'kΩ', 4.7, undefined],
  ['-12 Pa', 'pressure', 'Pa', -12, undefined],
  ['31', 'count', '1', 31, undefined],
];

const bad: [string, QuantityKind, string, QuantityField?][] = [
  ['', 'length', 'empty'],
  ['   ', 'length', 'empty'],
  ['about six', 'volume', 'not-a-quantity'],
  ['<b>6 L</b>', 'volume', 'not-a-quantity'],
  ['6 L; 7 L', 'volume', 'unknown-unit'],
  ['6–7 L', 'volume', 'not-a-quantity'],
  ['6 ± L', 'volume', 'not-a-quantity'],
  ['± 3 L', 'volume', 'not-a-quantity'],
  ['12 12 L', 'volume', 'not-a-number'],
  ['1.2.3 mm', 'length', 'not-a-number'],
  ['1e9 mm', 'length', 'out-of-range'],
  ['1e400 L', 'volume', 'out-of-range'],
  ['-5 mm', 'length', 'negative'],
  ['-300 °C', 'temperature', 'out-of-range'],
  ['6 bar', 'volume', 'unit-of-another-kind'],
  ['6 lpn', 'volume-flow', 'unknown-unit'],
  ['6 ± 1 bar', 'volume', 'unit-of-another-kind'],
  ['6 L ± 1 bar', 'volume', 'unit-of-another-kind'],
  ['5', 'length', 'unit-missing'],
  ['600 L', 'volume', 'out-of-range', { max: 0.2 }],
  ['NaN mm', 'length', 'not-a-quantity'],
  ['Infinity mm', 'length', 'not-a-quantity'],
  ['6 L '.repeat(40), 'volume', 'not-a-quantity'],
  ['=1+2', 'length', 'not-a-quantity'],
];

describe('readQuantity', () => {
  it('reads what people type', () => {
    const wrong = good.flatMap(([text, kind, unit, value, plusMinus, field]) => {
      const { value: typed, problems } = readQuantity(text, kind, field);
      if (typed === undefined) return [`${text}: ${JSON.stringify(problems)}`];
      const found = toUnit(typed.value, unit);
      const spread = spanToUnit(typed.plusMinus, unit);
      const fits = typed.unit === unit && Math.abs(found - value) < 1e-9 && typed.plusMinusTyped === (plusMinus !== undefined) && (plusMinus === undefined || Math.abs(spread - plusMinus) < 1e-9) && problems.length === 0;
      return fits ? [] : [`${text}: ${found} ± ${spread} ${typed.unit} ${JSON.stringify(problems)}`];
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('names the fault, the place and the next step for everything else', () => {
    const wrong = bad.flatMap(([text, kind, code, field]) => {
      const { value, problems } = readQuantity(text, kind, { where: 'bag volume', ...field });
      const [first] = problems;
      const fits = value === undefined && first?.code === code && first.where.includes('bag volume') && first.next !== '' && first.level === 'stop';
      return fits ? [] : [`“${text}”: ${JSON.stringify({ value, problems })}, expected ${code}`];
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('counts half of the last digit where no ± was typed, none for whole counts', () => {
    expect(readQuantity('15.2 s', 'time').value?.plusMinus).toBeCloseTo(0.05, 12);
    expect(readQuantity('31', 'count').value?.plusMinus).toBe(0);
  });

  it('pitfall: reads 1,234 as a decimal comma and says so', () => {
    const { value, problems } = readQuantity('1,234 mm', 'length');
    expect(toUnit(value?.value ?? Number.NaN, 'mm')).toBeCloseTo(1.234, 9);
    expect(problems.map((problem) => [problem.code, problem.level])).toEqual([['comma-read-as-decimal', 'note']]);
  });

  it('offers the nearest unit for a slip of the finger', () => {
    expect(readQuantity('6 lpn', 'volume-flow').problems[0]?.next).toContain('L/min');
    expect(readQuantity('5 milimetre', 'length').problems[0]?.next).toContain('mm');
  });

  it('never gives NaN or an endless number, whatever is typed', () => {
    const kinds = fc.constantFrom<QuantityKind>('length', 'volume', 'temperature', 'ratio', 'count', 'volume-flow');
    const alphabet = fc.constantFrom(...Array.from('0123456789.,-+±/ eE%LmhsKC°"()x^ '));
    const texts = fc.oneof(fc.string({ maxLength: 30 }), fc.array(alphabet, { maxLength: 16 }).map((letters) => letters.join('')));
    fc.assert(fc.property(kinds, texts, (kind, text) => {
      const { value, problems } = readQuantity(text, kind);
      if (value === undefined) return problems.some((problem) => problem.level === 'stop');
      return Number.isFinite(value.value) && Number.isFinite(value.plusMinus) && value.plusMinus >= 0;
    }), { numRuns: 2000 });
  });

  it('reads back what formatMeasured writes', () => {
    const units = fc.constantFrom<[QuantityKind, UnitSymbol]>(['volume-flow', 'L/min'], ['length', 'mm'], ['pressure', 'Pa'], ['temperature', '°C'], ['ratio', '%'], ['rotation-speed', 'rpm'], ['resistance', 'kΩ']);
    const shares = fc.double({ min: 0.001, max: 0.4, noNaN: true });
    fc.assert(fc.property(units, fc.double({ min: 0.3, max: 9000, noNaN: true }), shares, ([kind, unit], size, share) => {
      const value = kind === 'temperature' ? 273.15 + (size % 400) : kind === 'ratio' ? size / 100 : kind === 'rotation-speed' ? size / 60 : size * spanSize(unit);
      const plusMinus = share * (kind === 'temperature' ? 10 : value);
      const read = readQuantity(formatMeasured({ kind, value, plusMinus }, unit), kind).value;
      // Two significant figures of the ±: 5 % of it at most when it starts with 1.
      return read !== undefined && Math.abs(read.value - value) <= 0.51 * plusMinus && Math.abs(read.plusMinus - plusMinus) <= 0.13 * plusMinus + 1e-12;
    }));
  });
});

function spanSize(unit: UnitSymbol): number {
  return 1 / spanToUnit(1, unit);
}

describe('readNumber', () => {
  it('reads plain numbers of every common form', () => {
    const rows: [string, number][] = [['6', 6], ['6,25', 6.25], ['−0.5', -0.5], ['+ 3', 3], ['1 234 567', 1_234_567], ['1,234,567', 1_234_567], ['1.234.567', 1_234_567], ['2e-3', 0.002], ['5.', 5], ['1.234', 1.234]];
    expect(rows.filter(([text, value]) => readNumber(text, 'walls').value !== value)).toEqual([]);
  });

  it('refuses what is no number', () => {
    const rows: [string, string][] = [['', 'empty'], ['six', 'not-a-number'], ['1,23,4', 'not-a-number'], ['--1', 'not-a-number'], ['.', 'not-a-number'], ['1e999', 'out-of-range'], ['999999999999', 'out-of-range'], ['0x10', 'not-a-number']];
    const wrong = rows.filter(([text, code]) => readNumber(text, 'walls').problems[0]?.code !== code || readNumber(text, 'walls').value !== undefined);
    expect(wrong).toEqual([]);
  });
});
