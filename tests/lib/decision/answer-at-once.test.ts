import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAirPath, type AirPath } from '@/lib/airflow';
import { answerAtOnce, compareAirOptions, moved } from '@/lib/decision';

const FILE = readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8');

/** The demo path with one entry changed, and the answer to it. */
function changed(change: (sheet: Sheet) => void): AirPath {
  const sheet = JSON.parse(FILE) as Sheet;
  change(sheet);
  const { value, problems } = readAirPath(JSON.stringify(sheet));
  if (value === undefined) throw new Error(`the changed path should read: ${problems.map((problem) => problem.what).join('; ')}`);
  return value;
}

interface Size { width: string }
interface Sheet {
  duct: { section: Size };
  outlets: (Size & { name: string; branch: { section: Size } })[];
  measured?: unknown[];
}

const before = changed(() => undefined);
const answer = compareAirOptions(before);
const unread = changed((sheet) => { sheet.measured = []; });

describe('the air of a changed path, at once', () => {
  it('is the answer itself while nothing has changed, read anew or not', () => {
    expect(answerAtOnce(answer, before)).toBe(answer);
    const again = answerAtOnce(answer, changed(() => undefined));
    expect(again.outlets).toEqual(answer.outlets);
    expect(again.today).toEqual(answer.today);
  });

  it('leaves an answer alone that speaks of other outlets', () => {
    expect(answerAtOnce(answer, changed((sheet) => { sheet.outlets.pop(); sheet.measured = []; }))).toBe(answer);
  });

  it('moves a band by the factor where nothing was read, by its fourth root where readings have halved the band', () => {
    expect(moved({ value: 3, low: 2, high: 4 }, undefined, 1.21).value).toBeCloseTo(3.63, 12);
    expect(moved({ value: 3, low: 3, high: 6 }, { value: 3, low: 2, high: 8 }, 1.21).value / 3).toBeCloseTo(1.21 ** 0.25, 12);
    // A quantity that can stand at nothing has no share to be moved by.
    expect(moved({ value: 3, low: 2, high: 4 }, undefined, NaN)).toEqual({ value: 3, low: 2, high: 4 });
  });

  /** How far the estimate and the answer before lie from the samples' speed, as shares, with one size a fifth larger or smaller. */
  const misses = (from: AirPath, sheetOf: (sheet: Sheet) => void): { name: string; soon: number; was: number }[] => {
    const first = compareAirOptions(from);
    return [...SIZES].flatMap(([name, sizesOf]) => [0.8, 1.2].flatMap((factor) => {
      const path = changed((sheet) => { sheetOf(sheet); for (const size of sizesOf(sheet)) scale(size, factor); });
      const [soon, later] = [answerAtOnce(first, path), compareAirOptions(path)];
      return soon.outlets.map((outlet, k) => {
        const truth = later.outlets[k]?.speed.value ?? NaN;
        return { name: `${name} × ${factor}, ${outlet.name}`, soon: Math.abs(outlet.speed.value / truth - 1), was: Math.abs((first.outlets[k]?.speed.value ?? NaN) / truth - 1) };
      });
    }));
  };

  it('comes within 2 % of what the samples say afterwards where nothing was measured', () => {
    const rows = misses(unread, (sheet) => { sheet.measured = []; });
    expect(rows.length).toBeGreaterThan(14);
    expect(rows.filter(({ soon }) => !(soon <= 0.02))).toEqual([]);
  });

  it('comes nearer than the answer before where readings hold the path, within 6 %', () => {
    const rows = misses(before, () => undefined);
    expect(rows.filter(({ soon, was }) => !(soon <= 0.06 && soon <= was + 0.02))).toEqual([]);
  });
});

const SIZES = new Map<string, (sheet: Sheet) => readonly (Size | undefined)[]>([
  ['width of every mouth', (sheet) => sheet.outlets],
  ['width of the first mouth', (sheet) => [sheet.outlets[0]]],
  ['channel to the first mouth', (sheet) => [sheet.outlets[0]?.branch.section]],
  ['width of the duct', (sheet) => [sheet.duct.section]],
]);

function scale(size: Size | undefined, factor: number): void {
  if (size === undefined || !(Number.parseFloat(size.width) > 0)) throw new Error(`got ${size?.width ?? 'no size'}, expected a width`);
  size.width = `${Number.parseFloat(size.width) * factor} mm`;
}
