import type { Drive } from './drive';
import { driveLengths } from './drive';

/** Something that turns or repeats and the spacing that it would leave, m. */
export interface MarkOrigin {
  readonly origin: string;
  readonly spacing: number;
  /** Standard uncertainty of the spacing; 0 for pure geometry. */
  readonly standard?: number;
}

/** Spacings along the axis that a drive can leave. 20 teeth of 2 mm at 200 steps: 40, 2.0, 0.80, 0.40, 0.20 mm. Source: motion sheet 2.2. */
export function driveMarks(drive: Drive): readonly MarkOrigin[] {
  const { travelPerTurn, fullStep, electricalCycle, tooth } = driveLengths(drive);
  return [
    { origin: drive.kind === 'belt' ? 'pulley turn' : 'screw turn', spacing: travelPerTurn },
    ...(tooth === undefined ? [] : [{ origin: 'belt tooth', spacing: tooth }]),
    { origin: 'electrical cycle', spacing: electricalCycle },
    { origin: 'half electrical cycle', spacing: electricalCycle / 2 },
    { origin: 'full step', spacing: fullStep },
  ];
}

/** Which motor leaves the marks: one per axis, or one of two on crossed belts. */
export type MarkMotor = 'x' | 'y' | 'a' | 'b';

/**
 * Spacing along a wall, m, of marks that a motor leaves every `axisSpacing` of its belt, on a wall at `angle` rad to X. Infinite where
 * the motor stands still. Source: motion sheet 2.2. 2 mm at 30°: 2.309 (x), 4.000 (y); 0.8 mm at 45°: 0.566 (a), none (b).
 */
export function spacingOnWall(axisSpacing: number, angle: number, motor: MarkMotor): number {
  const share = Math.abs(beltPerPath(angle, motor));
  // sin and cos of "45°" differ in the last bit; that is not a spacing of kilometres.
  return share < 1e-12 ? Number.POSITIVE_INFINITY : axisSpacing / share;
}

/**
 * Spacing along the wall, m, of marks from a feeder part that takes `filamentPerTurn` (m) of filament per period: L·A_f/A_line.
 * Falls with wider and higher lines, not with speed. Source: motion sheet 2.3. 22.67 mm, 2.405 mm², 0.0814 mm²: 669.7 mm.
 */
export function feederSpacing(filamentPerTurn: number, filamentArea: number, lineArea: number): number {
  if (!(lineArea > 0)) throw new Error(`feederSpacing: got line area ${lineArea}, expected more than 0`);
  return (filamentPerTurn * filamentArea) / lineArea;
}

/** Height, m, of one period that wraps round the part: h·λ/path per layer. 669.7 mm on 400 mm at 0.2 mm: 0.335 mm. */
export function heightOfPeriod(spacing: number, layerHeight: number, pathPerLayer: number): number {
  if (!(pathPerLayer > 0)) throw new Error(`heightOfPeriod: got path ${pathPerLayer}, expected more than 0`);
  return (layerHeight * spacing) / pathPerLayer;
}

/** Spacing along the path, m, of something that repeats every `period` s at `speed` m/s. 20 s at 60 mm/s: 1200 mm. */
export function timedSpacing(speed: number, period: number): number {
  return speed * period;
}

/** Spacing in height, m, of something that repeats every `period` s when a layer takes `layerTime` s. 20 s, 15 s, 0.2 mm: 0.267 mm. */
export function timedHeight(layerHeight: number, period: number, layerTime: number): number {
  return (layerHeight * period) / layerTime;
}

/**
 * Beat of layer height and full steps of the height screw: every so many layers the rounding repeats. Undefined when each layer is
 * a whole number of steps. Source: motion sheet 2.4. 0.15 mm on 0.04 mm steps: 4 layers, 0.60 mm.
 */
export function layerBeat(layerHeight: number, fullStep: number): { readonly layers: number; readonly height: number } | undefined {
  const ratio = layerHeight / fullStep;
  const rest = Math.abs(ratio - Math.round(ratio));
  if (rest < 1e-9) return undefined;
  return { layers: 1 / rest, height: layerHeight / rest };
}

/**
 * Spacing in height that a pattern shorter than two layers seems to have, m; longer ones are unchanged, whole fractions of a
 * layer vanish (infinite). Source: motion sheet 2.4. 0.35 mm at 0.2 mm layers shows as 0.467 mm.
 */
export function aliasedHeight(spacing: number, layerHeight: number): number {
  if (spacing >= 2 * layerHeight) return spacing;
  const perLayer = layerHeight / spacing;
  const rest = Math.abs(perLayer - Math.round(perLayer));
  return rest < 1e-9 ? Number.POSITIVE_INFINITY : layerHeight / rest;
}

function beltPerPath(angle: number, motor: MarkMotor): number {
  switch (motor) {
    case 'x': return Math.cos(angle);
    case 'y': return Math.sin(angle);
    case 'a': return Math.cos(angle) + Math.sin(angle);
    case 'b': return Math.cos(angle) - Math.sin(angle);
    default: {
      const never: never = motor;
      throw new Error(`beltPerPath: unknown motor ${String(never)}`);
    }
  }
}
