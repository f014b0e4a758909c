import { describe, expect, it } from 'vitest';
import { planOf } from '@/app/air/air-views';
import { DEMO_SHEET, EMPTY_SHEET } from '@/app/air/sheet';
import { AirPathPlan } from '@/app/_drawings/air-path-plan';
import type { PlanOfPath } from '@/app/_drawings/air-path-figures';
import { placePlan, type PlacedPlan } from '@/app/_drawings/air-path-placing';
import { readAirPath } from '@/lib/airflow';
import { collisions, renderSheets } from '../rendered-sheet';

const WIDTHS = [700, 560, 358, 288];
const DEMO_FAN = { kind: 'blower', name: 'part fan, 40 × 10 radial', frame: '40 x 10', freeFlow: '0.72 L/s' };
const OUTLETS = [['left', '180°'], ['right', '0°'], ['back', '90°'], ['front', '270°']].map(([name, direction]) => ({ name, direction, width: '12 mm', height: '3 mm', distance: '15 mm', branch: { section: { width: '9 mm', height: '6 mm' }, length: '40 mm', bends: [] } }));

const branch = (length: string): object => ({ section: { width: '9 mm', height: '6 mm' }, length, bends: [{ kind: 'radius', radius: '12 mm' }, { kind: 'mitre' }] });

const sheets: readonly (readonly [string, object])[] = [
  ['the example', DEMO_SHEET], ['nothing known', EMPTY_SHEET], ['one outlet', { ...DEMO_SHEET, outlets: OUTLETS.slice(1, 2), measured: [] }], ['four outlets', { ...EMPTY_SHEET, outlets: OUTLETS }],
  ...(['series', 'parallel', 'own-ducts'] as const).flatMap((arrangement): [string, object][] => [
    [`two equal fans, ${arrangement}`, { ...DEMO_SHEET, fan: { ...DEMO_FAN, count: 2, arrangement }, measured: [] }],
    [`two unlike fans, ${arrangement}`, { ...DEMO_SHEET, fan: { ...DEMO_FAN, arrangement, second: { name: 'axial, 30 × 10', kind: 'axial', frame: '30 x 10' } }, measured: [] }],
    [`two fans of which little is known, ${arrangement}`, { ...EMPTY_SHEET, outlets: OUTLETS, fan: { arrangement, second: {} } }],
  ]),
  ['a branch of 3 mm and one of 300', { ...DEMO_SHEET, outlets: [{ ...OUTLETS[0], width: '20 mm', tilt: '70°', branch: branch('300 mm') }, { ...OUTLETS[1], distance: '3 mm', width: '2 mm', height: '0.6 mm', tilt: '0°', branch: branch('3 mm') }], measured: [] }],
  ['a long duct and a far mouth', { ...DEMO_SHEET, duct: { length: '400 mm' }, outlets: [{ ...OUTLETS[0], distance: '120 mm' }, { ...OUTLETS[1], name: 'the one that blows from behind the right pillar' }], measured: [] }],
  ['a narrow short duct', { ...DEMO_SHEET, duct: { section: { width: '5 mm', height: '12.5 mm' }, length: '5 mm' }, measured: [] }],
  ['a narrow high duct', { ...DEMO_SHEET, duct: { section: { width: '5 mm', height: '12.5 mm' }, length: '40 mm' }, measured: [] }],
  ['an axial fan on a wide duct', { ...DEMO_SHEET, fan: { ...DEMO_FAN, kind: 'axial' }, duct: { section: { width: '36 mm', height: '30 mm' }, length: '30 mm' }, measured: [] }],
  ['channels higher than wide', { ...DEMO_SHEET, outlets: OUTLETS.map((outlet, i) => ({ ...outlet, branch: { section: { width: '4 mm', height: `${20 + i} mm` }, length: '30 mm', bends: [] } })), measured: [] }],
  ['round channels', { ...DEMO_SHEET, duct: { section: { diameter: '16 mm' }, length: '18 mm' }, outlets: OUTLETS.map((outlet) => ({ ...outlet, branch: { section: { diameter: '8 mm' }, length: '40 mm', bends: [] } })), measured: [] }],
  ['round mouths that stand askew', { ...EMPTY_SHEET, outlets: [['one', '30°'], ['two', '60°'], ['three', '20°']].map(([name, direction]) => ({ name, direction, diameter: '5 mm', distance: '22 mm', tilt: '-10°' })) }],
];

const plans = sheets.map(([name, sheet]): readonly [string, PlanOfPath] => {
  const { value } = readAirPath(JSON.stringify(sheet));
  if (value === undefined) throw new Error(`placed sizes: the sheet of ${name} cannot be read`);
  const plan = planOf(value, undefined, 'm/s');
  // With the speeds in words, as they stand there once they are reckoned.
  return [name, { ...plan, outlets: plan.outlets.map((outlet, i) => ({ ...outlet, speed: 3 + i, reading: '2.77–3.54 m/s' })) }];
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

  it('have their grips inside the sheet too', () => {
    const grips = each.flatMap(({ name, placed }) => placed.sizes.flatMap((size) => (size.grip === undefined ? [] : [{ name: `${name}: ${size.key}`, ...size.grip, ...placed, sizes: undefined }])));
    expect(grips.length).toBeGreaterThan(300);
    expect(grips.filter(({ x, y, width, height }) => x < 0 || y < 0 || x > width || y > height).map(({ name }) => name)).toEqual([]);
  });

  it('are not covered by other words', () => {
    const found = each.flatMap(({ name, plan, width }) => renderSheets(<AirPathPlan {...plan} width={width} id="p" />).flatMap((sheet) => collisions(sheet).map((pair) => `${name}: ${pair}`)));
    expect(found).toEqual([]);
  });

  it('name every size of every outlet once', () => {
    const [, , , four] = plans;
    const keys = four === undefined ? [] : placePlan(four[1], 700).sizes.map((size) => size.key);
    // Frame and duct: 4. Of each outlet: width, height, distance and tilt of the mouth; width and height of the channel, length and bends of the branch.
    expect([keys.length, new Set(keys).size]).toEqual([4 + 4 * 8, 4 + 4 * 8]);
  });

  it('tell the height of duct and channel once, after the width, wherever they stand; none of what is round', () => {
    const found = each.flatMap(({ name, placed, plan }) => {
      const keys = placed.sizes.map((size) => size.key);
      const pairs = [['duct-width', 'duct-height'] as const, ...plan.outlets.map((_, i) => [`channel ${i}`, `channel-height ${i}`] as const)];
      const wrong = pairs.filter(([width, height], i) => (i === 0 ? plan.duct.isRound : plan.outlets[i - 1]?.isRoundChannel) === true ? keys.includes(height) : keys.indexOf(height) !== keys.indexOf(width) + 1);
      return wrong.map(([, height]) => `${name}: ${height}`);
    });
    expect(found).toEqual([]);
    expect(plans.flatMap(([, plan]) => plan.outlets).filter((outlet) => outlet.isRoundChannel === true).length).toBe(4);
  });

  it('keep channels that are cut across clear of every figure, and inside the sheet', () => {
    const found = each.flatMap(({ name, placed }) => {
      const thick = 1.6 * placed.unrolled.k;
      return placed.unrolled.across.walls.split('Z').filter(Boolean).flatMap((ring) => {
        const dots = [...ring.matchAll(/[ML]?(-?[\d.]+) (-?[\d.]+)(?=[LA]|$)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
        const xs = dots.map(([x]) => x);
        // A ring is as high as it is wide; its two dots stand level.
        const ys = dots.flatMap(([, y]) => (ring.includes('A') ? [y - (Math.max(...xs) - Math.min(...xs)) / 2, y + (Math.max(...xs) - Math.min(...xs)) / 2] : [y]));
        const box = { x: Math.min(...xs) - thick, y: Math.min(...ys) - thick, w: Math.max(...xs) - Math.min(...xs) + 2 * thick, h: Math.max(...ys) - Math.min(...ys) + 2 * thick };
        const isIn = box.x >= 0 && box.y >= 0 && box.x + box.w <= placed.width && box.y + box.h <= placed.height;
        return [...(isIn ? [] : [`${name}: outside`]), ...placed.sizes.filter((size) => overlap(size.box, box)).map((size) => `${name}: ${size.key}`)];
      });
    });
    expect(found).toEqual([]);
    expect(each.filter(({ placed }) => placed.unrolled.across.walls !== '').length).toBeGreaterThan(20);
  });

  it('show a height that nobody measured with a question mark, and that of an unknown branch as one alone', () => {
    const heights = (index: number): string[] => plans.slice(index, index + 1).flatMap(([, plan]) => placePlan(plan, 700).sizes.filter(({ size }) => size.endsWith('-height') && size !== 'mouth-height').map(({ words }) => words));
    expect(heights(0)).toEqual(['7', '5', '7']);
    expect(heights(1)).toEqual([expect.stringMatching(/^\d[\d.]*\?$/u), '?', '?']);
  });

  it('are spoken with the drawing: how wide and high each branch is inside', () => {
    const markup = plans.slice(0, 2).map(([, plan]) => renderSheets(<AirPathPlan {...plan} width={358} id="p" />)[0]?.markup ?? '');
    expect(markup[0]).toMatch(/branch 58 mm long, 9 by 5 mm inside, with 3 bends.*branch 24 mm long, 12 by 7 mm inside, with 1 bend,/u);
    expect(markup[1]).not.toContain('mm inside');
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
    // The example: the fan's frame and every size of duct and outlets is given. Nothing known: all 20.
    expect(marks).toEqual([0, 20]);
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

  it('keeps every figure at its turn when the duct grows out of the plan, so that hand and keyboard keep their hold', () => {
    for (const width of WIDTHS) {
      const [inPlan, broken] = [placePlan(withDuct(45), width), placePlan(withDuct(46), width)];
      expect([inPlan.layout.breaks.length, broken.layout.breaks.length]).toEqual([0, 1]);
      expect(broken.sizes.map((size) => size.key)).toEqual(inPlan.sizes.map((size) => size.key));
    }
  });

  it('keeps every figure at its turn under a hand that takes the room of the cuts across, and gives none back before it lets go', () => {
    const [, plan] = plans[0] ?? [];
    const withBranch = (mm: number): PlanOfPath => ({ ...example, outlets: (plan?.outlets ?? []).map((outlet, i) => (i === 0 ? { ...outlet, branch: mm } : outlet)) });
    const held = placePlan(withBranch(58), 700);
    const grown = placePlan(withBranch(90), 700, held);
    expect([held.unrolled.column === undefined, grown.unrolled.column === undefined]).toEqual([false, true]);
    expect(grown.sizes.map(({ key }) => key)).toEqual(held.sizes.map(({ key }) => key));
    expect(placePlan(withBranch(20), 700, grown).unrolled.column).toBeUndefined();
    expect(placePlan(withBranch(20), 700).unrolled.column).toBeDefined();
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
