import { driedShare } from '@/lib/extrusion';
import { rounded, settingOf, spread, type MovingFigure } from './moving-figure';

const RADIUS = 0.875e-3;

/** Share of the water, 0 to 1, that has left a 1.75 mm strand after some hours, at a diffusion in 10⁻¹² m²/s. */
export function driedAfter(hours: number, diffusion: number): number {
  return driedShare((diffusion * 1e-12 * hours * 3600) / RADIUS ** 2);
}

/** The last of the water takes for ever: it is never said to be all out. */
const percent = (share: number): string => (share > 0.995 ? 'over 99 %' : `${rounded(100 * share)} %`);

export const dryingHours: MovingFigure = {
  title: 'Hours of drying, and what warmth does to them',
  sliders: [
    { label: 'Hours in the dryer', from: 1, to: 24, step: 1, start: 6, words: (value) => `${value} h` },
    { label: 'How fast water moves in the plastic', from: 1, to: 40, step: 1, start: 10, words: (value) => `${value} × 10⁻¹² m²/s` },
  ],
  at: (values) => {
    const [hours, diffusion] = [settingOf(values, 0), settingOf(values, 1)];
    const out = driedAfter(hours, diffusion);
    const [slow, fast] = [driedAfter(hours, diffusion / 2), driedAfter(hours, diffusion * 2)];
    const line = (of: number) => spread(0, 24, 60).map((x) => ({ x, y: 100 * driedAfter(x, of) }));
    return {
      x: { words: 'hours', from: 0, to: 24 },
      y: { words: 'water that has left, %', from: 0, to: 100 },
      lines: [
        { name: 'as set', as: 'strong', points: line(diffusion) },
        { name: 'half as fast', as: 'ghost', points: line(diffusion / 2) },
        { name: 'twice as fast', as: 'ghost', points: line(diffusion * 2) },
      ],
      mark: { x: hours, y: 100 * out, words: percent(out) },
      said: `After ${hours} h in very dry air ${percent(out)} of the water has left a 1.75 mm strand; ${percent(slow)} to ${percent(fast)} if the plastic is twice as slow or as fast.`,
    };
  },
  columns: ['water that has left', 'twice as slow', 'twice as fast'],
  row: (values) => {
    const [hours, diffusion] = [settingOf(values, 0), settingOf(values, 1)];
    return [percent(driedAfter(hours, diffusion)), percent(driedAfter(hours, diffusion / 2)), percent(driedAfter(hours, diffusion * 2))];
  },
  tabled: [2, 4, 6, 8, 12, 24],
  holds: 'A single strand in very dry air. On a spool the inner turns wait for the outer ones, and damp air stops short of dry. The speed of water rises steeply with warmth; its figure here is from memory.',
};
