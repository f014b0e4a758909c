import { describe, expect, it } from 'vitest';
import { chartOf, lettered } from '@/app/air/air-views';
import { DEMO_SHEET, type Sheet } from '@/app/air/sheet';
import { CurveChart } from '@/app/_charts';
import { readAirPath, type AirPathResult } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { collisions, outside, renderSheets, type RenderedSheet } from '../rendered-sheet';

/** Few samples: only where things stand is asked here. */
const SAMPLES = 300;
const WIDTHS = [632, 570, 520, 480, 358, 288];
const DEMO_FAN = { kind: 'blower', name: 'part fan', frame: '40 x 10', claim: 'measured', freeFlow: '0.72 L/s', maxPressure: '118 Pa' };
const SHEETS: readonly [string, Sheet][] = [
  ['the example', DEMO_SHEET],
  ...(['series', 'parallel', 'own-ducts'] as const).map((arrangement): [string, Sheet] => [`two fans, ${arrangement}`, { ...DEMO_SHEET, fan: { ...DEMO_FAN, arrangement, second: { kind: 'axial', frame: '30 x 10', freeFlow: '1.6 L/s', maxPressure: '42 Pa' } } }]),
];

function resultOf(sheet: Sheet): AirPathResult {
  const { value, problems } = readAirPath(JSON.stringify(sheet));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return compareAirOptions(value, problems, { samples: SAMPLES });
}

/** Names and figures that the circle of an option covers; its own letter stands in it. */
function covered(sheet: RenderedSheet): string[] {
  const circles = [...sheet.markup.matchAll(/<circle[^>]*cx="([-\d.]+)" cy="([-\d.]+)" r="11.3"/gu)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
  if (circles.length === 0) throw new Error('a chart without circles would check nothing');
  return circles.flatMap(({ x, y }) => sheet.words.filter((w) => w.text.length > 1 && x + 11 > w.left && x - 11 < w.right && y + 11 > w.top + 1 && y - 11 < w.bottom - 1).map((w) => `circle at ${x.toFixed(0)}, ${y.toFixed(0)} over \u201c${w.text}\u201d`));
}

describe('the chart of an air path', () => {
  it.each(SHEETS)('keeps circles off the names, and names off one another, whichever change is chosen: %s', (_, sheet) => {
    const result = resultOf(sheet);
    const letters = lettered(result);
    expect(letters.length).toBeGreaterThan(4);
    const found = letters.flatMap(({ letter, option }) => WIDTHS.flatMap((width) => renderSheets(<CurveChart {...chartOf(result, letters, option.id, 'metric')} width={width} height={Math.min(400, Math.max(300, Math.round(width * 0.56)))} />)
      .flatMap((drawn) => [...covered(drawn), ...collisions(drawn), ...outside(drawn, 3)].map((what) => `${letter} at ${width}: ${what}`))));
    expect(found).toEqual([]);
  });

  it('puts the point of fans with ducts of their own on the curves of the first, and the total into the tables', () => {
    const result = resultOf(SHEETS[3]?.[1] ?? DEMO_SHEET);
    const letters = lettered(result);
    const leave = letters.find(({ option }) => option.kind === 'leave')?.option;
    const [first, second] = leave?.fans ?? [];
    const chart = chartOf(result, letters, 'leave', 'metric');
    expect(chart.curves.map((curve) => curve.name)).toEqual(expect.arrayContaining(['fan 1', 'duct 1', 'fan 2', 'duct 2']));
    expect(chart.points.find((point) => point.letter === 'A')?.flow).toBeCloseTo(1000 * (first?.flow.value ?? 0), 9);
    // Medians of a sum and of its parts differ a little.
    expect((leave?.operating.flow.value ?? 0) / ((first?.flow.value ?? 0) + (second?.flow.value ?? 0))).toBeCloseTo(1, 1);
  });
});
