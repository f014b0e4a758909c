import type { Reading } from '@/lib/problems';
import { preferredUnit, readQuantity } from '@/lib/units';
import type { QuantityKind } from '@/lib/units';
import type { Formula, ReadingSpec, ReadingValue, Readings } from './formula';
import { unknownReadings } from './unknown-readings';

/**
 * Reads typed texts into the readings of a formula: `{ volume: '6.0 ± 0.3 L', time: ['15.2 s', '14.8 s'] }`. Formulas over
 * any kind need `kind`. All problems of all fields come back together.
 */
export function readReadings(formula: Formula, texts: Readonly<Record<string, string | readonly string[]>>, kind?: QuantityKind): Reading<Readings> {
  const problems = unknownReadings(formula.readings, Object.keys(texts));
  const found: Record<string, readonly ReadingValue[]> = {};
  for (const spec of formula.readings) {
    const typed = texts[spec.id];
    if (typed === undefined) continue;
    const rows = typeof typed === 'string' ? [typed] : typed;
    const read = rows.map((row, index) => readOne(row, spec, rows.length > 1 ? `${spec.title}, reading ${index + 1}` : spec.title, kind));
    problems.push(...read.flatMap((one) => one.problems));
    found[spec.id] = read.flatMap((one) => (one.value === undefined ? [] : [one.value]));
  }
  return { value: problems.some((problem) => problem.level === 'stop') ? undefined : found, problems };
}

function readOne(text: string, spec: ReadingSpec, where: string, anyKind: QuantityKind | undefined): Reading<ReadingValue> {
  const kind = spec.kind === 'any' ? anyKind : spec.kind;
  if (kind === undefined) throw new Error(`readReadings: ${spec.id} takes any kind, expected the kind to be given`);
  return readQuantity(text, kind, {
    where,
    unit: spec.unit ?? preferredUnit(kind, 'metric'),
    ...(spec.min === undefined ? {} : { min: spec.min }),
    ...(spec.max === undefined ? {} : { max: spec.max }),
  });
}
