/** How large a drawing is set: beside a list entry, beside a step of a method, or as a figure with words. */
export type Size = 'row' | 'step' | 'figure';

export const sizes: Readonly<Record<Size, { readonly width: number; readonly height: number }>> = {
  row: { width: 92, height: 64 },
  step: { width: 150, height: 114 },
  figure: { width: 320, height: 220 },
};

/** The plate a drawing is made on: px, its size class, and an id that is unique on the page (hatches need one). */
export interface Plate {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly size: Size;
}

/** Free space kept at the edges, px. */
export interface Room {
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
}

/** A plate with a scale: `k` px per drawn unit (mm where the drawing is to scale), origin at the top left of the box. */
export interface Frame extends Plate {
  readonly k: number;
  readonly left: number;
  readonly top: number;
}

/**
 * Fits a box of drawn units into a plate, as large as it will go, centred in what the room leaves.
 * Lines and words keep their px size; only the geometry follows k.
 */
export function fit(plate: Plate, box: { readonly w: number; readonly h: number }, room: Room = {}): Frame {
  const left = room.left ?? 2;
  const top = room.top ?? 2;
  const width = plate.width - left - (room.right ?? 2);
  const height = plate.height - top - (room.bottom ?? 2);
  const k = Math.max(0, Math.min(width / box.w, height / box.h));
  return { ...plate, k, left: left + (width - k * box.w) / 2, top: top + (height - k * box.h) / 2 };
}

export const px = (value: number): number => Math.round(value * 100) / 100;
export const atX = (on: Frame, x: number): number => px(on.left + on.k * x);
export const atY = (on: Frame, y: number): number => px(on.top + on.k * y);

/**
 * Carries an SVG path in drawn units (absolute commands M L H V Q C S T A Z only) onto the frame, in px.
 * `M0 0H10` on a frame with k = 4 at (2, 3) gives `M2 3H42`.
 */
export function pathOn(on: Frame, d: string): string {
  return (d.match(/[A-Za-z][^A-Za-z]*/g) ?? []).map((piece) => pieceOn(on, piece)).join('');
}

function pieceOn(on: Frame, piece: string): string {
  const command = piece.charAt(0);
  const numbers = (piece.slice(1).match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
  if (command === 'Z') return 'Z';
  if (command === 'H') return `H${numbers.map((x) => atX(on, x)).join(' ')}`;
  if (command === 'V') return `V${numbers.map((y) => atY(on, y)).join(' ')}`;
  if (command === 'A') return `A${numbers.map((n, i) => arcNumberOn(on, n, i % 7)).join(' ')}`;
  if (!'MLQCST'.includes(command)) throw new Error(`pathOn: got command "${command}", expected one of M L H V Q C S T A Z`);
  return command + numbers.map((n, i) => (i % 2 === 0 ? atX(on, n) : atY(on, n))).join(' ');
}

function arcNumberOn(on: Frame, n: number, place: number): number {
  if (place < 2) return px(n * on.k);
  if (place < 5) return n;
  return place === 5 ? atX(on, n) : atY(on, n);
}
