import { describe, expect, it } from 'vitest';
import { FORMULAS, isFormulaId, readReadings } from '@/lib/measuring';
import type { FormulaId, Outcome, Readings } from '@/lib/measuring';
import { isUnitSymbol, spanToUnit, toUnit } from '@/lib/units';
import type { QuantityKind } from '@/lib/units';
import values from '../../independent/measuring/values.json';

/** Printed to three or four figures. */
const PRINTED = 5e-4;
/** Intervals are worked by hand to three figures. */
const BY_HAND = 2e-3;

function read(id: FormulaId, texts: Record<string, string | string[]>, kind?: string): Readings {
  const { value, problems } = readReadings(FORMULAS[id], texts, kind as QuantityKind | undefined);
  if (value === undefined) throw new Error(`${id}: ${JSON.stringify(problems)}`);
  return value;
}

function outcome(id: FormulaId, texts: Record<string, string | string[]>, kind?: string): Outcome {
  const { value, problems } = FORMULAS[id].compute(read(id, texts, kind));
  if (value === undefined) throw new Error(`${id}: ${JSON.stringify(problems)}`);
  return value;
}

const close = (a: number, b: number, tolerance: number): boolean => Math.abs(a - b) <= tolerance * Math.max(Math.abs(b), 1e-9);

const examples = values.formulas.map((row) => ({ tolerance: PRINTED, plusMinus: undefined, kind: undefined, ...row })) as readonly {
  formula: string; readings: Record<string, string | string[]>; kind: string | undefined; unit: string; value: number; plusMinus: number | undefined; tolerance: number; origin: string;
}[];

describe('formulas', () => {
  it('give the worked numbers of the sheets', () => {
    expect(examples.length).toBeGreaterThan(30);
    const wrong = examples.flatMap((row) => {
      if (!isFormulaId(row.formula) || !isUnitSymbol(row.unit)) return [`${row.formula} ${row.unit}: unknown`];
      const { result } = outcome(row.formula, row.readings, row.kind);
      const found = toUnit(result.value, row.unit);
      const spread = spanToUnit(result.plusMinus, row.unit);
      const label = `${row.formula} (${row.origin})`;
      return [
        ...(close(found, row.value, row.tolerance) ? [] : [`${label}: got ${found}, expected ${row.value} ${row.unit}`]),
        ...(row.plusMinus === undefined || close(spread, row.plusMinus, BY_HAND) ? [] : [`${label}: got ± ${spread}, expected ± ${row.plusMinus}`]),
      ];
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('are each held to an outside number', () => {
    const covered = new Set(examples.map((row) => row.formula));
    expect(Object.keys(FORMULAS).filter((id) => !covered.has(id))).toEqual([]);
  });

  it('carry their own name and show a unit of the kind of their result', () => {
    const wrong = Object.entries(FORMULAS).filter(([id, formula]) => formula.id !== id || formula.source === '' || formula.readings.length === 0);
    expect(wrong.map(([id]) => id)).toEqual([]);
  });

  it('share the ± among parts that make one, largest first', () => {
    const wrong = examples.flatMap((row) => {
      const { budget } = outcome(row.formula as FormulaId, row.readings, row.kind);
      const whole = budget.reduce((sum, part) => sum + part.share, 0);
      const sorted = budget.every((part, index) => index === 0 || part.share <= (budget[index - 1]?.share ?? 1));
      return budget.length === 0 || (Math.abs(whole - 1) < 1e-9 && sorted) ? [] : [`${row.formula}: ${JSON.stringify(budget)}`];
    });
    expect(wrong).toEqual([]);
  });

  it('explain every result without a missing number', () => {
    const wrong = examples.filter((row) => /NaN|undefined|Infinity|∞/u.test(outcome(row.formula as FormulaId, row.readings, row.kind).steps.join(' ')));
    expect(wrong.map((row) => row.formula)).toEqual([]);
  });

  it('never narrow the ± when a limit grows', () => {
    const spans = ['0.1', '0.2', '0.4', '0.8'].map((limit) => outcome('bag-fill', { volume: `6.0 ± ${limit} L`, time: ['15.2', '14.8', '15.6'] }).result.plusMinus);
    expect(spans).toEqual([...spans].sort((a, b) => a - b));
  });

  it('say how much one more reading would help, and which', () => {
    const few = outcome('bag-fill', { volume: '6.00 ± 0.01 L', time: ['15.2', '14.8', '15.6'] });
    expect(few.nextReading).toBe('time');
    // By hand: u 0.4/√4 = 0.2 s of 15.2 and t(3) = 3.18 against u 0.2309 and t(2) = 4.30; limits are negligible.
    expect((few.nextReadingPlusMinus ?? 0) / few.result.plusMinus).toBeCloseTo((0.2 * 3.18245) / (0.23094 * 4.30265), 2);
    expect(outcome('bag-fill', { volume: '6.0 L', time: '15.2 s' }).nextReading).toBeUndefined();
  });

  it('stand in for the scatter that a single reading cannot show', () => {
    const { standard, result, budget } = outcome('bag-fill', { volume: '6 ± 0 L', time: '15.2 s' });
    // By hand: ±0.5 s of a thumb and ±0.05 s of the display, both rectangular, over 15.2 s.
    // A step of one u in 1/t is 0.04 % off its slope.
    expect(standard / result.value).toBeCloseTo(Math.hypot(0.5, 0.05) / Math.sqrt(3) / 15.2, 4);
    expect(budget.map((part) => part.part)).toContain('time to fill, taken once');
    // A ± that was typed says it all.
    expect(outcome('bag-fill', { volume: '6 ± 0 L', time: '15.2 ± 0.1 s' }).standard / result.value).toBeCloseTo(0.1 / Math.sqrt(3) / 15.2, 6);
  });

  it('leave out a share of nothing: two exact readings have no ±', () => {
    const { result, budget } = outcome('layer-time', { time: '10 ± 0 s', layers: '10' });
    expect([result.plusMinus, budget]).toEqual([0, []]);
  });

  it('take a computed quantity with its interval, not as limits', () => {
    const given = { reading: [{ kind: 'length' as const, value: 1, plusMinus: 0.1, interval: true }] };
    expect(FORMULAS['repeat-mean'].compute(given).value?.result.plusMinus).toBeCloseTo(0.1, 6);
  });

  it('measure a shift on two faces twice as surely as the edges of one allow', () => {
    // One face by the sheet, 1.3: u = 0.0445 mm; two faces halve the variance of caliper and edges.
    const { standard } = outcome('shift-size', { face: '1.62', opposite: '1.54' });
    expect(standard * 1e3).toBeCloseTo(Math.sqrt((0.03 ** 2 / 2 + 0.05 ** 2) / 3), 4);
  });
});

describe('bad readings', () => {
  const table: [FormulaId, Record<string, string | string[]>, string, string?][] = [
    ['bag-fill', { volume: '600 L', time: ['15 s'] }, 'out-of-range'],
    ['bag-fill', { volume: '6 L' }, 'missing-reading'],
    ['bag-fill', { volume: '6 L', time: '0 s' }, 'out-of-range'],
    ['bag-fill', { volume: '6 L', time: '-15 s' }, 'negative'],
    ['bag-fill', { volume: '6 bar', time: '15 s' }, 'unit-of-another-kind'],
    ['bag-fill', { volumes: '6 L', volume: '6 L', time: '15 s' }, 'unknown-reading'],
    ['bag-fill', { volume: '', time: '15 s' }, 'empty'],
    ['fan-speed-from-sound', { pitch: '900 Hz', blades: '30.5' }, 'not-whole'],
    ['single-wall-flow', { wall: '0.48 mm', aimed: '0.45 mm', layer: '0.6 mm' }, 'line-taller-than-wide'],
    ['ratio-of-two', { reading: '1 mm', reference: '0 mm' }, 'zero-reference', 'length'],
    ['difference-of-two', { first: '1 mm' }, 'missing-reading', 'length'],
    ['heater-resistance', { meter: '0.2 Ω', leads: '0.3 Ω' }, 'not-positive'],
    ['thermistor-temperature', { resistance: '25 Ω' }, 'out-of-range'],
    ['mass-loss', { before: '200 g', after: '199 g', spool: '250 g' }, 'spool-too-heavy'],
    ['scale-factor', { small: '20 mm', large: '100 mm', drawnSmall: '100 mm', drawnLarge: '20 mm' }, 'sizes-in-wrong-order'],
    ['ripple-frequency', { speed: '100 mm/s', length: '0.5 mm', ripples: '2' }, 'unlikely-ripple'],
    ['air-speed-on-nozzle', { speed: '0.3 m/s', area: '300 mm2' }, 'below-start-speed'],
    ['extruded-mass', { mass: '0.3 g', asked: '100 mm' }, 'short-sample'],
    ['spacing', { length: '4 mm', gaps: '2' }, 'few-gaps'],
  ];
  it('get a problem with a place and a next step', () => {
    const wrong = table.flatMap(([id, texts, code, kind]) => {
      const typed = readReadings(FORMULAS[id], texts, kind as QuantityKind | undefined);
      const problems = typed.value === undefined ? typed.problems : FORMULAS[id].compute(typed.value).problems;
      const found = problems.find((problem) => problem.code === code);
      return found !== undefined && found.where !== '' && found.next !== '' ? [] : [`${id} ${JSON.stringify(texts)}: ${JSON.stringify(problems)}`];
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('are reported all together', () => {
    const { problems } = readReadings(FORMULAS['bag-fill'], { volume: '6 bar', time: ['x s', '15 s', ''] });
    expect(problems.map((problem) => problem.code)).toEqual(['unit-of-another-kind', 'not-a-quantity', 'empty']);
  });
});
