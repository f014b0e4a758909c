import { px } from './frame';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A closed arrow head with its tip at `tip`, pointing along the angle (degrees, 0 = right, 90 = down); px. */
export function ArrowHead({ tip, angle, length = 10, width = 3.4, tone = 'ink2' }: { readonly tip: Point; readonly angle: number; readonly length?: number; readonly width?: number; readonly tone?: 'ink' | 'ink2' | 'accent' }) {
  return <path className={`d-no-line d-fill-${tone}`} d={arrowHeadPath(tip, angle, length, width)} />;
}

export function arrowHeadPath(tip: Point, angle: number, length: number, width: number): string {
  const a = (angle * Math.PI) / 180;
  const back = { x: tip.x - length * Math.cos(a), y: tip.y - length * Math.sin(a) };
  const half = { x: (width / 2) * Math.sin(a), y: (-width / 2) * Math.cos(a) };
  return `M${px(tip.x)} ${px(tip.y)}L${px(back.x + half.x)} ${px(back.y + half.y)}L${px(back.x - half.x)} ${px(back.y - half.y)}Z`;
}

/** The direction from one point to another, degrees. */
export const angleTo = (from: Point, to: Point): number => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
