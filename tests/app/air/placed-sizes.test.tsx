import { describe, expect, it } from 'vitest';
import { planOf } from '@/app/air/air-views';
import { DEMO_SHEET, EMPTY_SHEET } from '@/app/air/sheet';
import { AirPathPlan } from '@/app/_drawings/air-path-plan';
import { placePlan, type PlacedPlan, type PlanOfPath } from '@/app/_drawings/air-path-placing';
import { readAirPath } from '@/lib/airflow';
import { collisions, renderSheets } from '../rendered-sheet';

const WIDTHS = [700, 560, 358, 288];
const DEMO_FAN = { kind: 'blower', name: 'part fan, 40 × 10 radial', frame: '40 x 10', freeFlow: '0.72 L/s' };
const OUTLETS = [['left', '180°'], ['right', '0°'], ['back', '90°'], ['front', '270°']].map(([name, direction]) => ({ name, direction, width: '12 mm', height: '3 mm', distance: '15 mm', branch: { section: { width: '9 mm', height: '6 mm' }, length: '40 mm', bends: [] } }));

const sheets: readonly (readonly [string, object])[] = [
  ['the example', DEMO_SHEET], ['nothing known', EMPTY_SHEET], ['one outlet', { ...DEMO_SHEET, outlets: OUTLETS.slice(1, 2), measured: [] }], ['four outlets', { ...EMPTY_SHEET, outlets: OUTLETS }],
  ...(['series', 'parallel', 'own-ducts'] as const).flatMap((arrangement): [string, object][] => [
    [`two equal fans, ${arrangement}`, { ...DEMO_SHEET, fan: { ...DEMO_FAN, count: 2, arrangement }, measured: [] }],
    [`two unlike fans, ${arrangement}`, { ...DEMO_SHEET, fan: { ...DEMO_FAN, arrangement, second: { name: 'axial, 30 × 10', kind: 'axial', frame: '30 x 10' } }, measured: [] }],
    [`two fans of which little is known, ${arrangement}`, { ...EMPTY_SHEET, outlets: OUTLETS, fan: { arrangement, second: {} } }],
  ]),
];

const plans = sheets.map(([name, sheet]): readonly [string, PlanOfPath] => {
  const { value } = readAirPath(JSON.stringify(sheet));
  if (value === undefined) throw new Error(`placed sizes: the sheet of ${name} cannot be read`);
  return [name, planOf(value, undefined, 'm/s')];
});

const each = plans.flatMap(([name, plan]) => WIDTHS.map((width) => ({ name: `${name} at ${width}`, placed: placePlan(plan, width), plan, width })));

describe('figures in the plan of the air path', () => {
  it('can be touched: every one is at least 24 px wide and high', () => {
    const small = each.flatMap(({ name, placed }) => placed.sizes.filter(({ box }) => box.w < 24 || box.h < 24).map((size) => `${name}: ${size.key}`));
    expect(small).toEqual([]);
  });

  it('do not cover one another', () => {
    const covered = each.flatMap(({ name, placed }) => placed.sizes.flatMap((a, i) => placed.sizes.slice(i + 1).filter((b) => overlap(a.box, b.box)).map((b) => `${name}: ${a.key} and ${b.key}`)));
    expect(covered).toEqual([]);
  });

  it('stand inside the sheet', () => {
    const out = each.flatMap(({ name, placed }) => placed.sizes.filter(({ box }) => box.x < -2 || box.y < -2 || box.x + box.w > placed.width + 2 || box.y + box.h > placed.height + 2).map((size) => `${name}: ${size.key}`));
    expect(out).toEqual([]);
  });

  it('are not covered by other words', () => {
    const found = each.flatMap(({ name, plan, width }) => renderSheets(<AirPathPlan {...plan} width={width} id="p" />).flatMap((sheet) => collisions(sheet).map((pair) => `${name}: ${pair}`)));
    expect(found).toEqual([]);
  });

  it('name every size of every outlet once', () => {
    const [, , , four] = plans;
    const keys = four === undefined ? [] : placePlan(four[1], 700).sizes.map((size) => size.key);
    // Frame and duct: 3. Two outlets at the sides: 6 each. Back and front, without their channel: 5 each.
    expect([keys.length, new Set(keys).size]).toEqual([3 + 12 + 10, 3 + 12 + 10]);
  });

  it('name the size of each of two unlike fans, and of two equal ones once', () => {
    const frames = plans.filter(([name]) => name.startsWith('two')).map(([name, plan]) => [name, placePlan(plan, 700).sizes.filter((size) => size.key.endsWith('frame')).map((size) => size.key).sort().join(' ')]);
    expect(frames.length).toBe(9);
    expect(frames.filter(([name = '', found]) => found !== (name.includes('equal') ? 'frame' : 'frame second-frame'))).toEqual([]);
  });

  it('leave two fans clear of one another, and both inside the plan', () => {
    const found = plans.flatMap(([name, plan]) => {
      const { fan, second, box } = placePlan(plan, 700).layout;
      if (second === undefined || plan.second === undefined) return [];
      const [a, b] = [{ ...fan, r: plan.fan.size / 2 }, { ...second, r: plan.second.size / 2 }];
      const apart = Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) >= a.r + b.r;
      const inside = [a, b].every((each) => each.x - each.r >= box.left && each.x + each.r <= box.right && each.y - each.r >= box.top);
      return apart && inside ? [] : [name];
    });
    expect(found).toEqual([]);
  });

  it('carry a question mark where nobody measured', () => {
    const marks = plans.slice(0, 2).map(([, plan]) => placePlan(plan, 700).sizes.filter((size) => size.words.endsWith('?')).length);
    // The example: the fan's frame and every size of duct and outlets is given. Nothing known: all 15.
    expect(marks).toEqual([0, 15]);
  });
});

describe('the ground of the plan', () => {
  const [, example] = plans[0] ?? [];
  if (example === undefined) throw new Error('placed sizes: got no example');
  const withDuct = (length: number): PlanOfPath => ({ ...example, duct: { ...example.duct, length } });
  const ground = ({ on: { k, left, top }, height }: PlacedPlan): readonly number[] => [k, left, top, height];

  it('stays where it is under most small steps, so that only what hangs on a size moves', () => {
    const steps = WIDTHS.flatMap((width) => Array.from({ length: 40 }, (_, i) => [withDuct(18 + i / 10), withDuct(18 + (i + 1) / 10), width] as const));
    const moved = steps.filter(([before, after, width]) => ground(placePlan(before, width)).slice(0, 3).join() !== ground(placePlan(after, width)).slice(0, 3).join());
    expect(moved.length / steps.length).toBeLessThan(0.1);
  });

  it('stays under a hand that makes the path smaller, sheet and all', () => {
    const held = placePlan(withDuct(30), 700);
    for (const length of [29, 20, 10, 2]) expect(ground(placePlan(withDuct(length), 700, held)), `${length} mm`).toEqual(ground(held));
  });

  it('gives way to a hand that makes it larger before anything leaves the sheet, and seldom', () => {
    const held = placePlan(withDuct(10), 700);
    const tops = Array.from({ length: 60 }, (_, i) => {
      const placed = placePlan(withDuct(10 + i / 2), 700, held);
      expect(placed.on.k).toBe(held.on.k);
      expect(Math.min(...placed.sizes.map((size) => size.box.y)), `${10 + i / 2} mm`).toBeGreaterThanOrEqual(0);
      expect(Math.max(...placed.sizes.map((size) => size.box.y + size.box.h))).toBeLessThanOrEqual(placed.height);
      return placed.on.top;
    });
    expect(new Set(tops).size).toBeGreaterThan(1);
    expect(new Set(tops).size).toBeLessThan(5);
  });
});

function overlap(a: { x: number; y: number; w: number; h: number }, b: { x: number; y: number; w: number; h: number }): boolean {
  return a.x < b.x + b.w - 1 && b.x < a.x + a.w - 1 && a.y < b.y + b.h - 1 && b.y < a.y + a.h - 1;
}
