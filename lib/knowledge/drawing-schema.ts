import { z } from 'zod';

const share = z.number().min(0).max(1);
const side = z.enum(['left', 'right', 'both', 'front', 'back']);

/**
 * What a drawing shows. Every drawing is parametric: the picture is made from these numbers, never from an image
 * file, so a page can show its own case. `app/_drawings` has one component per `show`.
 */
export const drawingSchema = z.discriminatedUnion('show', [
  /** A stack of layers on the bed; the faults may be combined. Lengths are in drawn layers unless said. */
  z.strictObject({
    show: z.literal('stack'),
    layers: z.number().int().min(3).max(16).optional(),
    shape: z.enum(['block', 'overhang', 'tower', 'pyramid']).optional(),
    curl: share.optional(),
    curlSide: side.optional(),
    shift: z.number().min(-4).max(4).optional(),
    shiftAt: z.number().int().min(1).max(15).optional(),
    lean: z.number().min(-4).max(4).optional(),
    liftedCorners: share.optional(),
    gaps: z.number().int().min(0).max(8).optional(),
    split: z.number().int().min(1).max(15).optional(),
    bands: z.enum(['every-few-layers', 'irregular']).optional(),
    ripple: share.optional(),
    blobs: z.number().int().min(0).max(8).optional(),
    wideFoot: share.optional(),
    thin: share.optional(),
    stopsAt: z.number().int().min(1).max(15).optional(),
    melted: share.optional(),
  }),
  /** Two towers with a gap between them, with threads. */
  z.strictObject({ show: z.literal('towers'), strings: z.number().int().min(0).max(9), thick: z.boolean().optional() }),
  /** A span across a gap. */
  z.strictObject({ show: z.literal('bridge'), sag: share.optional(), loose: z.number().int().min(0).max(5).optional() }),
  /** One face seen from above or from the side, with its lines. */
  z.strictObject({
    show: z.literal('face'),
    which: z.enum(['first-layer', 'top', 'wall', 'hole', 'inside']),
    fault: z.enum(['none', 'gaps', 'not-stuck', 'ridges', 'scars', 'pillows', 'missing-lines', 'too-thin', 'too-squashed', 'scale-texture', 'ripple', 'oval', 'loose-infill', 'zits', 'delaminated', 'one-corner']).optional(),
  }),
  z.strictObject({ show: z.literal('fan'), kind: z.enum(['radial', 'axial']).optional(), size: z.number().min(20).max(140).optional(), stopped: z.boolean().optional(), blocked: z.boolean().optional(), label: z.string().optional() }),
  z.strictObject({ show: z.literal('outlets'), left: share.optional(), right: share.optional(), strips: z.boolean().optional(), meter: z.boolean().optional(), above: z.boolean().optional() }),
  z.strictObject({ show: z.literal('bag'), filled: share, volume: z.string().optional() }),
  z.strictObject({ show: z.literal('air-meter'), nozzle: z.boolean().optional(), reading: z.string().optional() }),
  z.strictObject({ show: z.literal('kitchen-scale'), reading: z.string().optional(), plate: z.boolean().optional() }),
  z.strictObject({ show: z.literal('hot-end'), mark: z.enum(['none', 'nozzle', 'heater', 'sensor', 'heat-break', 'heat-sink', 'liner', 'sleeve', 'leak']).optional(), temperature: z.string().optional(), above: z.string().optional(), /** mm that a retraction pulls the filament back; shows the melt path alone, to scale. */ drawnBack: z.number().min(0).max(8).optional(), oozes: z.boolean().optional() }),
  z.strictObject({ show: z.literal('feeder'), mark: z.enum(['none', 'gear', 'idler', 'filament', 'dust', 'gap', 'screw']).optional(), marked: z.string().optional(), stroke: z.enum(['back', 'forth', 'both']).optional() }),
  z.strictObject({ show: z.literal('belt'), mark: z.enum(['none', 'slack', 'pulley-screw', 'idler', 'worn', 'pluck']).optional() }),
  z.strictObject({ show: z.literal('axis'), mark: z.enum(['none', 'bearing', 'rail', 'wheel', 'motor', 'mount', 'screw', 'nut', 'coupler', 'tilt']).optional() }),
  z.strictObject({ show: z.literal('bed'), mark: z.enum(['none', 'plate', 'screws', 'dirt', 'glue', 'clips', 'probe', 'low-corner', 'gap-paper', 'warm']).optional() }),
  z.strictObject({ show: z.literal('board'), mark: z.enum(['none', 'driver', 'fan-output', 'connector', 'fan', 'supply', 'sensor-plug']).optional(), reading: z.string().optional() }),
  z.strictObject({ show: z.literal('calliper'), on: z.enum(['step', 'wall', 'filament', 'curl', 'outlet', 'part']), reading: z.string().optional() }),
  z.strictObject({ show: z.literal('watch'), reading: z.string().optional() }),
  z.strictObject({ show: z.literal('meter'), measures: z.enum(['volt', 'ohm', 'ampere', 'celsius']), reading: z.string().optional() }),
  z.strictObject({ show: z.literal('spool'), mark: z.enum(['none', 'tangle', 'damp', 'brittle', 'drag', 'diameter']).optional() }),
  z.strictObject({ show: z.literal('display'), text: z.string().max(40) }),
  z.strictObject({ show: z.literal('test-print'), which: z.enum(['eight-directions', 'two-towers', 'cube', 'single-wall', 'bridges', 'first-layer-squares', 'temperature-steps']) }),
  z.strictObject({ show: z.literal('slicer'), mark: z.enum(['layer-time', 'speed', 'fan', 'line-width', 'flow', 'preview', 'profile']).optional() }),
  z.strictObject({ show: z.literal('power'), state: z.enum(['off', 'on']) }),
  z.strictObject({ show: z.literal('room'), mark: z.enum(['none', 'draught', 'enclosure', 'cold']).optional() }),
]);

export type Drawing = z.infer<typeof drawingSchema>;
