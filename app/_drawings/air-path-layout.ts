import type { Point } from './arrows';

/** One outlet as it is drawn; lengths in mm, direction in degrees round the nozzle: 0 right, 90 back, 180 left, 270 front. */
export interface PlanOutlet {
  readonly name: string;
  readonly direction: number;
  /** Clear mouth: across the plan and in height. */
  readonly width: number;
  readonly height: number;
  /** A round mouth is as high as it is wide. */
  readonly isRound?: boolean;
  /** From the mouth to the spot under the nozzle, along the jet. */
  readonly distance: number;
  /** How far the jet points down from level, degrees; level unless said. */
  readonly tilt?: number;
  /** Length of its branch from the fork, clear width of its channel, and how many bends it has. */
  readonly branch: number;
  readonly channel: number;
  readonly bends: number;
  /** Clear height of its channel; as high as the mouth unless said. */
  readonly channelHeight?: number;
  /** A round channel is as high as it is wide. */
  readonly isRoundChannel?: boolean;
  /** Per bend the length of its middle line, 0 for a sharp one; all sharp unless said. */
  readonly arcs?: readonly number[];
  /** Where the channel becomes wider or narrower after the branch's length: clear width, length of the piece, and of the slope at its beginning. */
  readonly changes?: readonly PlanChange[];
  readonly ending?: 'land' | 'thin' | 'tapered' | 'open';
  /** Air speed at the mouth, m/s, and the same in words with its range. */
  readonly speed: number;
  readonly reading: string;
  /** Fed by the second of two fans that have ducts of their own. */
  readonly ofSecond?: boolean;
}

export interface PlanChange {
  readonly width: number;
  readonly length: number;
  readonly slope: number;
}

export interface PlanFan {
  readonly size: number;
  readonly kind: 'radial' | 'axial';
  readonly name: string;
  readonly reading: string;
}

/** The second of two fans: behind the first, beside it on the same duct, or on a duct of its own. */
export interface PlanSecondFan extends PlanFan {
  readonly arrangement: 'series' | 'parallel' | 'own-ducts';
}

/** A straight-sided channel by its middle line, mm; closed at its far end or open. */
export interface Channel {
  readonly points: readonly Point[];
  readonly width: number;
  readonly closed: boolean;
}

export interface OutletLayout {
  readonly outlet: PlanOutlet;
  readonly mouth: Point;
  /** Way of the air from the fan's foot to the mouth. */
  readonly way: readonly Point[];
  /** Clearly less air than the strongest. */
  readonly lee: boolean;
}

export interface AirPathLayout {
  readonly fan: Point;
  readonly second: Point | undefined;
  readonly fork: Point;
  readonly channels: readonly Channel[];
  readonly outlets: readonly OutletLayout[];
  /** Edges of everything, mm, nozzle at 0, 0, back upward (negative y). */
  readonly box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  /** Half the spread of the side channels' middle lines. */
  readonly reach: number;
  /** From the nozzle's axis to the outer face of the side channels. */
  readonly rim: number;
  /** Where a duct stands that is longer than the plan has room for: it is broken there, and drawn whole among the branches. */
  readonly breaks: readonly number[];
}

export const wallThickness = 1.6;
/** An outlet under this share of the strongest one's speed lies in the lee. */
const leeShare = 0.8;
const longestTrunk = 45;

/**
 * Lays the air path out in the plan from its dimensions: mouths where they stand round the nozzle, channels on a
 * rectangle around it, the fork so far back and so far to one side that the branches come near their lengths.
 * A single outlet has no fork: the same duct runs straight to it.
 */
export function layOutAirPath(fan: PlanFan, duct: { readonly width: number; readonly length: number }, outlets: readonly PlanOutlet[], second?: PlanSecondFan): AirPathLayout {
  const widest = Math.max(4, ...outlets.map((o) => o.channel));
  const reach = Math.max(12, ...outlets.map(levelDistance)) + widest / 2 + 4;
  const fork = forkOf(outlets, reach, widest, fan.size);
  const trunk = Math.min(longestTrunk, Math.max(0, duct.length));
  const foot = fork.y - widest / 2 - trunk;
  const r = fan.size / 2;
  const centre = { x: fork.x + exitAside(fan), y: foot - r };
  const other = second && placeSecond(second, fan, centre, { x: fork.x, y: foot }, Math.min(8, trunk / 2), Math.min(duct.width, 10), outlets);
  const laid = outlets.map((outlet) => {
    const x = outlet.ofSecond === true ? (other?.exit ?? fork.x) : fork.x;
    return layOutOutlet(outlet, { x, y: fork.y }, reach, { x, y: foot }, outlets);
  });
  const rim = reach + widest / 2 + wallThickness;
  const trunks = [fork.x, ...(second?.arrangement === 'own-ducts' && other !== undefined ? [other.exit] : [])];
  const trunkAt = (x: number): Channel => ({ points: [{ x, y: foot }, { x, y: fork.y + widest / 2 }], width: duct.width, closed: true });
  const front = laid.some((o) => o.way.some((p) => p.y > widest)) ? rim : Math.max(12, ...outlets.map((o) => o.width / 2 + 6));
  return {
    fan: centre, second: other?.centre, fork, reach, rim, outlets: laid,
    breaks: duct.length > longestTrunk ? trunks : [],
    channels: [
      trunkAt(fork.x), ...(other?.channels ?? []), ...trunks.slice(1).map(trunkAt),
      ...laid.flatMap((o) => channelsOf(o, { x: o.way[1]?.x ?? fork.x, y: fork.y })),
    ],
    box: {
      left: Math.min(-rim, centre.x - r, ...(other === undefined ? [] : [other.centre.x - other.r])), right: Math.max(rim, centre.x + r, ...(other === undefined ? [] : [other.centre.x + other.r])),
      top: Math.min(centre.y - r, ...(other === undefined ? [] : [other.centre.y - other.r])), bottom: front,
    },
  };
}

/** From the mouth to the nozzle's axis, seen from above. */
export const levelDistance = ({ distance, tilt = 0 }: PlanOutlet): number => distance * Math.cos(rad(tilt));

/** How far a fan's middle stands beside its own exit: a radial fan blows out at one side of its foot. */
const exitAside = (fan: PlanFan): number => (fan.kind === 'radial' ? 0.23 * fan.size : 0);

/** Room between two fans, mm. */
const gap = 3;

interface SecondAt {
  readonly centre: Point;
  readonly r: number;
  /** Where its exit stands, along x. */
  readonly exit: number;
  readonly channels: readonly Channel[];
}

/** Behind the first with a short joint; to its left with a channel to the same duct; or on the side of its own outlets. */
function placeSecond(second: PlanSecondFan, fan: PlanFan, first: Point, foot: Point, down: number, joint: number, outlets: readonly PlanOutlet[]): SecondAt {
  const [r1, r] = [fan.size / 2, second.size / 2];
  const at = (centre: Point, channels: readonly Channel[]): SecondAt => ({ centre, r, exit: centre.x - exitAside(second), channels });
  const beside = (side: 1 | -1): Point => ({ x: first.x + side * (r1 + gap + r), y: foot.y - r });
  switch (second.arrangement) {
    case 'series': {
      const top = first.y - r1;
      return at({ x: first.x + exitAside(second), y: top - gap - r }, [{ points: [{ x: first.x, y: top - gap }, { x: first.x, y: top }], width: Math.min(fan.size, second.size) / 2.2, closed: true }]);
    }
    case 'parallel': {
      const centre = beside(-1);
      const exit = centre.x - exitAside(second);
      return at(centre, [{ points: [{ x: exit, y: foot.y }, { x: exit, y: foot.y + down }, { x: foot.x, y: foot.y + down }], width: joint, closed: true }]);
    }
    case 'own-ducts': {
      const aside = outlets.reduce((sum, outlet) => sum + (outlet.ofSecond === true ? 1 : -1) * Math.cos(rad(outlet.direction)), 0);
      return at(beside(aside < 0 ? -1 : 1), []);
    }
    default: return second.arrangement satisfies never;
  }
}

/** Back and aside so that left and right branches get their lengths: L + R gives how far back, L − R how far aside. */
function forkOf(outlets: readonly PlanOutlet[], reach: number, widest: number, fanSize: number): Point {
  const sides = outlets.filter((o) => Math.abs(Math.cos(rad(o.direction))) > 0.7);
  const left = sides.find((o) => Math.cos(rad(o.direction)) < 0);
  const right = sides.find((o) => Math.cos(rad(o.direction)) > 0);
  const least = Math.max(widest * 1.5 + 6, ...outlets.filter((o) => Math.sin(rad(o.direction)) > 0.5).map((o) => levelDistance(o) + widest / 2 + 4));
  const lengths = [left, right].filter((o) => o !== undefined).map((o) => o.branch + levelDistance(o));
  const mean = lengths.reduce((sum, l) => sum + l, 0) / Math.max(1, lengths.length);
  const behind = outlets.find((o) => Math.sin(rad(o.direction)) > 0.7);
  const wished = lengths.length > 0 ? mean - 2 * reach : behind === undefined ? 0 : levelDistance(behind) + behind.branch;
  const back = Math.min(Math.max(least, wished), least + 40);
  const aside = left !== undefined && right !== undefined ? (left.branch - right.branch) / 2 : 0;
  const most = Math.min(reach, fanSize);
  return { x: Math.min(Math.max(aside, -most), most), y: -back };
}

function layOutOutlet(outlet: PlanOutlet, fork: Point, reach: number, foot: Point, all: readonly PlanOutlet[]): OutletLayout {
  const a = rad(outlet.direction);
  const mouth = { x: levelDistance(outlet) * Math.cos(a), y: -levelDistance(outlet) * Math.sin(a) };
  const turn = hitOf(a, reach, -fork.y);
  const round = aroundTo(fork, turn, reach);
  const way = [foot, fork, ...round, mouth];
  const strongest = Math.max(...all.map((o) => o.speed));
  return { outlet, mouth, way, lee: all.length > 1 && outlet.speed < leeShare * strongest };
}

/** Where the ray from the nozzle in this direction meets the rectangle of channels. */
function hitOf(a: number, reach: number, back: number): Point {
  const c = Math.cos(a);
  const s = Math.sin(a);
  const sideways = Math.abs(c) < 1e-9 ? Infinity : reach / Math.abs(c);
  const along = Math.abs(s) < 1e-9 ? Infinity : (s > 0 ? back : reach) / Math.abs(s);
  const t = Math.min(sideways, along);
  return { x: t * c, y: -t * s };
}

/** From the fork along the rectangle to the place where the branch turns inward. */
function aroundTo(fork: Point, turn: Point, reach: number): Point[] {
  if (Math.abs(turn.y - fork.y) < 1e-6) return [turn];
  const side = turn.x === 0 ? (fork.x < 0 ? -reach : reach) : Math.sign(turn.x) * reach;
  const corner = { x: side, y: fork.y };
  return Math.abs(turn.x - side) < 1e-6 ? [corner, turn] : [corner, { x: side, y: turn.y }, turn];
}

/** The branch with its closed end just beyond the turn, and the stub with the mouth. */
function channelsOf({ outlet, way, mouth }: OutletLayout, fork: Point): Channel[] {
  const round = way.slice(1, -1);
  const turn = round.at(-1) ?? fork;
  const before = round.at(-2) ?? fork;
  const straight = Math.hypot(turn.x - before.x, turn.y - before.y) < 1e-6;
  const end = straight ? turn : beyond(before, turn, outlet.width / 2);
  return [
    { points: [{ x: fork.x, y: fork.y - outlet.channel / 2 }, ...round.slice(0, -1), end], width: outlet.channel, closed: true },
    { points: [turn, mouth], width: outlet.width, closed: false },
  ];
}

export function beyond(from: Point, to: Point, by: number): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: to.x + ((to.x - from.x) * by) / length, y: to.y + ((to.y - from.y) * by) / length };
}

/** A parallel to a polyline at `by` to its left, corners mitred. */
export function parallelTo(points: readonly Point[], by: number): Point[] {
  return points.map((p, i) => {
    const a = points[i - 1];
    const b = points[i + 1];
    const n1 = a === undefined ? undefined : normalOf(a, p);
    const n2 = b === undefined ? undefined : normalOf(p, b);
    const n = n1 === undefined ? (n2 ?? { x: 0, y: 0 }) : n2 === undefined ? n1 : n1;
    if (n1 === undefined || n2 === undefined) return { x: p.x + n.x * by, y: p.y + n.y * by };
    const share = 1 + n1.x * n2.x + n1.y * n2.y;
    if (share < 0.2) return { x: p.x + n1.x * by, y: p.y + n1.y * by };
    return { x: p.x + ((n1.x + n2.x) / share) * by, y: p.y + ((n1.y + n2.y) / share) * by };
  });
}

function normalOf(a: Point, b: Point): Point {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
}

export const rad = (degrees: number): number => (degrees * Math.PI) / 180;
