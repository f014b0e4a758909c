import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { planOf } from '@/app/air/air-views';
import { DEMO_SHEET, EMPTY_SHEET } from '@/app/air/sheet';
import type { PlanOfPath } from '@/app/_drawings/air-path-figures';
import { AirPathPlan } from '@/app/_drawings/air-path-plan';
import { placePlan, type PlacedPlan } from '@/app/_drawings/air-path-placing';
import { readAirPath } from '@/lib/airflow';

/** What is drawn is measured in the paths themselves and held against the mm of the sheet, times the scale of its view. */
const WIDTHS = [700, 600, 358, 288];
/** Two ends, each rounded to a hundredth of a px. */
const ROUNDING = 0.03;

interface TypedOutlet {
  readonly name: string;
  readonly direction: number;
  readonly width: number;
  readonly height: number;
  readonly distance: number;
  readonly tilt: number;
  readonly branch: number;
  readonly channel: number;
  readonly channelHeight: number;
  readonly bends: readonly (number | 'sharp')[];
  readonly ending?: 'land' | 'thin' | 'tapered' | 'open';
  readonly fan?: number;
}

const typed: TypedOutlet = { name: 'left', direction: 180, width: 14, height: 3, distance: 15, tilt: 25, branch: 58, channel: 9, channelHeight: 5, bends: ['sharp', 'sharp', 'sharp'] };
const right: TypedOutlet = { ...typed, name: 'right', direction: 0, branch: 24, channel: 12, channelHeight: 7, bends: [12] };

const paths: readonly { readonly name: string; readonly duct?: number; readonly fan?: object; readonly outlets: readonly TypedOutlet[] }[] = [
  { name: 'two outlets', outlets: [typed, right] },
  { name: 'one outlet', outlets: [{ ...right, direction: 90, ending: 'tapered' }] },
  { name: 'four outlets', outlets: [typed, right, { ...typed, name: 'back', direction: 90, width: 4, ending: 'thin' }, { ...right, name: 'front', direction: 270, tilt: 50, bends: [8, 'sharp'], ending: 'open' }] },
  { name: 'own ducts', fan: { arrangement: 'own-ducts', second: { name: 'axial, 30 × 10', kind: 'axial', frame: '30 x 10' } }, outlets: [{ ...typed, fan: 1 }, { ...right, fan: 2 }] },
  { name: '3 mm and 300 mm', duct: 300, outlets: [{ ...typed, branch: 300, distance: 90, tilt: 80 }, { ...right, branch: 3, width: 2, height: 0.5, distance: 3, tilt: -5 }] },
];

const sheetOf = ({ duct = 18, fan = {}, outlets }: (typeof paths)[number]): object => ({
  ...EMPTY_SHEET, fan: { kind: 'blower', frame: '40 x 10', ...fan }, duct: { section: { width: '26 mm', height: '7 mm' }, length: `${duct} mm` },
  outlets: outlets.map(({ name, direction, width, height, distance, tilt, branch, channel, channelHeight, bends, ending, fan: fedBy }) => ({
    name, direction: `${direction}°`, width: `${width} mm`, height: `${height} mm`, distance: `${distance} mm`, tilt: `${tilt}°`, ...(ending === undefined ? {} : { ending }), ...(fedBy === undefined ? {} : { fan: fedBy }),
    branch: { section: { width: `${channel} mm`, height: `${channelHeight} mm` }, length: `${branch} mm`, bends: bends.map((bend) => (bend === 'sharp' ? { kind: 'mitre', angle: '90°' } : { kind: 'radius', angle: '90°', radius: `${bend} mm` })) },
  })),
});

const planFor = (sheet: object): PlanOfPath => {
  const { value, problems } = readAirPath(JSON.stringify(sheet));
  if (value === undefined) throw new Error(`drawn to scale: the sheet cannot be read: ${JSON.stringify(problems)}`);
  return planOf(value, undefined, 'm/s');
};

type Dot = readonly [number, number];

/** The corners of every part of a path, px. */
const partsOf = (d: string): Dot[][] => d.split('M').slice(1).map((part) => [...part.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]): Dot => [Number(x), Number(y)]));
const apart = ([x1, y1]: Dot, [x2, y2]: Dot): number => Math.hypot(x1 - x2, y1 - y2);
const spanOf = (numbers: readonly number[]): number => Math.max(...numbers) - Math.min(...numbers);

/** The clear inside of each branch in the order of the outlets; a duct that is drawn before them is left out. */
/** The channel of each outlet cut across, where it is drawn; a duct that is drawn before them is left out. */
const acrossOf = (placed: PlacedPlan): Dot[][] => partsOf(placed.unrolled.across.walls).slice(-placed.layout.outlets.length);

const runsOf = (placed: PlacedPlan): Dot[][] => partsOf(placed.unrolled.walls.clear).slice(-placed.layout.outlets.length);

const each = paths.flatMap((path) => WIDTHS.map((width) => ({ name: `${path.name} at ${width}`, path, placed: placePlan(planFor(sheetOf(path)), width) })));

/** Per outlet and view what was measured and what it must be, px. */
function held(measured: (placed: PlacedPlan, index: number) => number | undefined, entered: (outlet: TypedOutlet, placed: PlacedPlan) => number): string[] {
  return each.flatMap(({ name, path, placed }) => path.outlets.flatMap((outlet, index) => {
    const [found, wanted] = [measured(placed, index), entered(outlet, placed)];
    return found !== undefined && Math.abs(found - wanted) <= ROUNDING ? [] : [`${name}, ${outlet.name}: ${found} px, must be ${wanted}`];
  }));
}

/** Walls of an outlet in its section, from the upper lip round the channel to the lower one. */
function cutOf(placed: PlacedPlan, index: number): { readonly walls: readonly Dot[]; readonly spot: Dot; readonly side: number } | undefined {
  const name = placed.layout.outlets[index]?.outlet.name;
  return placed.sections.flatMap((section) => section.cuts.flatMap(({ laid, side }, i) => {
    const walls = partsOf(section.walls.walls)[i];
    return laid.outlet.name === name && walls !== undefined ? [{ walls, spot: [section.spot.x, section.spot.y] as const, side }] : [];
  }))[0];
}

function mouthOf(placed: PlacedPlan, index: number): { readonly across: number; readonly out: number; readonly up: number } | undefined {
  const cut = cutOf(placed, index);
  const [upper, lower] = [cut?.walls[0], cut?.walls.at(-1)];
  if (cut === undefined || upper === undefined || lower === undefined) return undefined;
  return { across: apart(upper, lower), out: ((upper[0] + lower[0]) / 2 - cut.spot[0]) * cut.side, up: cut.spot[1] - (upper[1] + lower[1]) / 2 };
}

/** The four corners of the channel: those farthest from the nozzle and their partners. */
function channelOf(placed: PlacedPlan, index: number): readonly Dot[] {
  const walls = cutOf(placed, index)?.walls ?? [];
  const middle = (walls.length - 4) / 2;
  return walls.slice(middle, middle + 4);
}

describe('the branches unrolled', () => {
  it('are as long as they were entered', () => {
    expect(held((placed, i) => spanOf((runsOf(placed)[i] ?? []).map(([x]) => x)), ({ branch }, placed) => branch * placed.unrolled.k)).toEqual([]);
  });

  it('begin as wide as the channel and end as wide as the mouth', () => {
    const at = (placed: PlacedPlan, i: number, end: 'start' | 'mouth'): number => {
      const run = runsOf(placed)[i] ?? [];
      const x = (end === 'start' ? Math.min : Math.max)(...run.map((dot) => dot[0]));
      const here = run.filter((dot) => dot[0] === x).map((dot) => dot[1]).sort((a, b) => a - b);
      // An open end has the channel's corners at the same place as the mouth's: the mouth is the inner or outer pair that the path ends with.
      return end === 'mouth' ? Math.abs((run[run.length / 2 - 1]?.[1] ?? NaN) - (run[run.length / 2]?.[1] ?? NaN)) : spanOf(here);
    };
    expect(held((placed, i) => at(placed, i, 'start'), ({ channel }, placed) => channel * placed.unrolled.k)).toEqual([]);
    expect(held((placed, i) => at(placed, i, 'mouth'), ({ width }, placed) => width * placed.unrolled.k)).toEqual([]);
  });

  it('show every bend, evenly spread, a rounded one as long as its arc where there is room', () => {
    const wrong = each.flatMap(({ name, path, placed }) => {
      const { k } = placed.unrolled;
      const [folds, rounds] = [partsOf(placed.unrolled.folds), partsOf(placed.unrolled.rounds)];
      let [sharp, rounded] = [0, 0];
      return path.outlets.flatMap(({ branch, bends }, index) => bends.flatMap((bend, i) => {
        const marks = bend === 'sharp' ? folds[sharp++] : rounds[rounded++];
        const xs = (marks ?? []).map(([x]) => x);
        const room = branch / (bends.length + 1);
        const arc = bend === 'sharp' ? 0 : Math.min((bend * Math.PI) / 2, 0.9 * room);
        const start = Math.min(...(runsOf(placed)[index] ?? []).map(([x]) => x));
        const middle = (Math.max(...xs) + Math.min(...xs)) / 2 - start;
        return Math.abs(spanOf(xs) - arc * k) <= ROUNDING && Math.abs(middle - room * (i + 1) * k) <= ROUNDING ? [] : [`${name}, bend ${i + 1} of outlet ${index + 1}: ${spanOf(xs)} px at ${middle}`];
      }));
    });
    expect(wrong).toEqual([]);
    expect(each.map(({ path, placed }) => partsOf(placed.unrolled.folds).length + partsOf(placed.unrolled.rounds).length - path.outlets.flatMap((outlet) => outlet.bends).length).filter((off) => off !== 0)).toEqual([]);
  });

  it('hold a duct that the plan breaks, as long and wide as it is', () => {
    const broken = each.filter(({ path }) => path.duct !== undefined);
    const drawn = broken.map(({ path, placed }) => {
      const duct = partsOf(placed.unrolled.walls.clear)[0] ?? [];
      return [placed.layout.breaks.length, spanOf(duct.map(([x]) => x)) / placed.unrolled.k / (path.duct ?? 0), spanOf(duct.map(([, y]) => y)) / placed.unrolled.k / 26];
    });
    expect(drawn.length).toBe(WIDTHS.length);
    for (const [breaks, long, wide] of drawn) {
      expect(breaks).toBe(1);
      expect(long).toBeCloseTo(1, 3);
      expect(wide).toBeCloseTo(1, 2);
    }
  });

  it('stand beside their channels cut across, as wide and as high as entered, level with their runs', () => {
    const cut = each.filter(({ placed }) => placed.unrolled.column !== undefined);
    expect(cut.map(({ name }) => name)).toEqual(expect.arrayContaining(['two outlets at 700', 'one outlet at 358', 'four outlets at 700', 'own ducts at 700']));
    const wrong = cut.flatMap(({ name, path, placed }) => path.outlets.flatMap(({ channel, channelHeight }, index) => {
      const [dots, { k, runs }] = [acrossOf(placed)[index] ?? [], placed.unrolled];
      const [xs, ys] = [dots.map(([x]) => x), dots.map(([, y]) => y)];
      const offs = [spanOf(xs) - channel * k, spanOf(ys) - channelHeight * k, (Math.max(...ys) + Math.min(...ys)) / 2 - (runs.at(index - path.outlets.length)?.from.y ?? NaN)];
      return offs.every((off) => Math.abs(off) <= ROUNDING) ? [] : [`${name}, outlet ${index + 1}: off by ${offs.join(', ')} px`];
    }));
    expect(wrong).toEqual([]);
  });

  it('hold a broken duct cut across before its branches', () => {
    const { unrolled, sizes } = placePlan(planFor(sheetOf({ name: 'long duct', duct: 60, outlets: [right] })), 800);
    const [dots = []] = partsOf(unrolled.across.walls);
    expect([partsOf(unrolled.across.walls).length, spanOf(dots.map(([x]) => x)) / unrolled.k, spanOf(dots.map(([, y]) => y)) / unrolled.k]).toEqual([2, expect.closeTo(26, 1), expect.closeTo(7, 1)]);
    expect(sizes.find(({ key }) => key === 'duct-height')?.arrows?.upright).toBe(true);
  });

  it('say a height in words where a cut across has no room, whole inside its row', () => {
    const said = each.filter(({ placed }) => placed.unrolled.column === undefined);
    expect(said.map(({ name }) => name)).toEqual(expect.arrayContaining(['two outlets at 288', '3 mm and 300 mm at 358']));
    expect(said.filter(({ placed }) => placed.unrolled.across.walls !== '').map(({ name }) => name)).toEqual([]);
    const rows = said.flatMap(({ path, placed }) => path.outlets.map(({ channelHeight }, index) => {
      const size = placed.sizes.find(({ key }) => key === `channel-height ${index}`);
      const word = placed.unrolled.words.find(({ x, y, words }) => words === 'high' && size !== undefined && Math.abs(x - size.box.x - size.box.w - 5) < 0.1 && Math.abs(y - 5 - size.box.y - size.box.h / 2) < 0.1);
      return [size?.words === String(channelHeight), size?.grip, word !== undefined];
    }));
    expect(rows.filter(([isSame, grip, isBeside]) => isSame !== true || grip !== undefined || isBeside !== true)).toEqual([]);
  });

  it('say their scale where it is not that of the plan', () => {
    const said = each.map(({ name, placed }) => [name, placed.unrolled.k < placed.on.k * 0.995, placed.unrolled.words.slice(0, 2).map(({ words }) => words).join(' ')] as const);
    expect(said.filter(([, isSmaller, words]) => words.includes('of the plan’s') !== isSmaller || words.includes('same scale') === isSmaller)).toEqual([]);
    expect(said.filter(([, isSmaller]) => isSmaller).length).toBeGreaterThan(3);
    // 300 mm in 442 px less 118 for the figures: 1.08, down to 1.05 px/mm; 1.05 / 3.43 is 0.31.
    expect(said.find(([name]) => name === '3 mm and 300 mm at 700')?.[2]).toMatch(/to scale, 0\.\d+ of the plan’s/u);
  });
});

describe('the section through the nozzle', () => {
  it('draws every mouth as high as it is, as far from the spot under the nozzle and as tilted as entered', () => {
    expect(held((placed, i) => mouthOf(placed, i)?.across, ({ height }, placed) => height * placed.on.k)).toEqual([]);
    expect(held((placed, i) => mouthOf(placed, i)?.out, ({ distance, tilt }, placed) => distance * Math.cos((tilt * Math.PI) / 180) * placed.on.k)).toEqual([]);
    expect(held((placed, i) => mouthOf(placed, i)?.up, ({ distance, tilt }, placed) => distance * Math.sin((tilt * Math.PI) / 180) * placed.on.k)).toEqual([]);
  });

  it('draws the channel as wide and high as it is', () => {
    expect(held((placed, i) => spanOf(channelOf(placed, i).map(([x]) => x)), ({ channel }, placed) => channel * placed.on.k)).toEqual([]);
    expect(held((placed, i) => spanOf(channelOf(placed, i).map(([, y]) => y)), ({ channelHeight }, placed) => channelHeight * placed.on.k)).toEqual([]);
  });

  it('shows every outlet once, two at most at one nozzle, and says when they are turned into the cut', () => {
    expect(each.filter(({ path, placed }) => placed.sections.flatMap(({ cuts }) => cuts).length !== path.outlets.length || placed.sections.some(({ cuts }) => new Set(cuts.map(({ side }) => side)).size !== cuts.length)).map(({ name }) => name)).toEqual([]);
    const askew = placePlan(planFor(sheetOf({ name: 'askew', outlets: [{ ...typed, direction: 150 }, { ...right, direction: 200 }] })), 700);
    expect(askew.sections.map(({ cuts, words }) => [cuts.length, words[0]?.words.includes('turned')])).toEqual([[2, true]]);
  });
});

describe('the plan from above', () => {
  it('draws fan, duct and distances to its scale, a tilted distance as it is seen from above', () => {
    for (const { name, path, placed } of each) {
      const { k } = placed.on;
      const length = (key: string): number | undefined => placed.sizes.flatMap(({ key: found, arrows }) => (found === key && arrows !== undefined ? [Math.abs(arrows.to - arrows.from)] : []))[0];
      if (path.fan === undefined) expect(length('frame'), name).toBeCloseTo(40 * k, 1);
      expect(length('duct-width'), name).toBeCloseTo(26 * k, 1);
      expect(length('duct-length'), name).toBeCloseTo((path.duct ?? 18) * (path.duct === undefined ? k : placed.unrolled.k), 1);
      path.outlets.forEach(({ distance, tilt }, index) => {
        const mouth = placed.layout.outlets[index]?.mouth;
        expect(Math.hypot(mouth?.x ?? NaN, mouth?.y ?? NaN), name).toBeCloseTo(distance * Math.cos((tilt * Math.PI) / 180), 9);
      });
    }
  });

  it('draws a trunk of any length as it is, down to nothing', () => {
    for (const duct of [0, 1, 3, 20, 45]) {
      const { channels, fork } = placePlan(planFor(sheetOf({ name: 'short', duct, outlets: [typed, right] })), 700).layout;
      // From the fan's foot to the edge of the widest channel, 12 mm, at the fork.
      expect(fork.y - 12 / 2 - (channels[0]?.points[0]?.y ?? NaN)).toBeCloseTo(duct, 9);
    }
  });
});

describe('dimensions and what they measure', () => {
  it('are as long as their figure says at the scale of their view, every one of them', () => {
    const measured = each.flatMap(({ name, placed }) => placed.sizes.flatMap(({ key, size, words, arrows, slant }) => {
      const length = arrows === undefined ? slant && apart([slant.from.x, slant.from.y], [slant.to.x, slant.to.y]) : Math.abs(arrows.to - arrows.from);
      const inRuns = ['branch', 'channel', 'channel-height', 'mouth-width'].includes(size) || (size.startsWith('duct-') && size !== 'duct-width' && placed.layout.breaks.length > 0);
      return length === undefined ? [] : [{ name: `${name}: ${key}`, size, off: length - Number(words) * (inRuns ? placed.unrolled.k : placed.on.k) }];
    }));
    expect(measured.filter(({ off }) => !(Math.abs(off) <= ROUNDING)).map(({ name, off }) => `${name} is off by ${off} px`)).toEqual([]);
    expect(new Set(measured.map(({ size }) => size))).toEqual(new Set(['frame', 'duct-length', 'duct-width', 'mouth-height', 'distance', 'channel', 'channel-height', 'branch', 'mouth-width']));
  });

  it('follow a hand: a pull of one millimetre moves its grip by one millimetre, outward and inward', () => {
    const by = (outlet: TypedOutlet, size: string, mm: number): TypedOutlet => ({
      ...outlet, ...(size === 'branch' ? { branch: outlet.branch + mm } : size === 'channel' ? { channel: outlet.channel + mm } : size === 'channel-height' ? { channelHeight: outlet.channelHeight + mm } : size === 'mouth-width' ? { width: outlet.width + mm } : size === 'distance' ? { distance: outlet.distance + mm } : {}),
    });
    const place = (outlet: TypedOutlet, width: number, before?: PlacedPlan): PlacedPlan => placePlan(planFor(sheetOf({ name: 'pulled', outlets: [typed, outlet] })), width, before);
    const gripOf = (placed: PlacedPlan, size: string): { x: number; y: number; along: 'x' | 'y'; perMillimetre: number } => placed.sizes.find((each) => each.key === `${size} 1`)?.grip ?? { x: NaN, y: NaN, along: 'x', perMillimetre: NaN };
    for (const width of [700, 358]) {
      const before = place(right, width);
      // On the phone the height of the channel is a figure among words, and has no grip.
      for (const size of ['branch', 'channel', 'mouth-width', 'distance', ...(width === 700 ? ['channel-height'] : [])]) {
        for (const mm of [-2, -1, 1, 2]) {
          const [from, to] = [gripOf(before, size), gripOf(place(by(right, size, mm), width, before), size)];
          expect(to[from.along] - from[from.along], `${size} by ${mm} mm at ${width}`).toBeCloseTo(mm * from.perMillimetre, 1);
        }
      }
    }
  });

  it('say nowhere that something is not to scale', () => {
    const plans = [DEMO_SHEET, EMPTY_SHEET, ...paths.map(sheetOf)].map(planFor);
    const found = plans.flatMap((plan) => WIDTHS.map((width) => renderToStaticMarkup(<AirPathPlan {...plan} width={width} id="s" />))).filter((markup) => /not to scale/iu.test(markup));
    expect(found).toEqual([]);
  });
});
