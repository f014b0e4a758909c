import { meltLimit, pressureFactor, pressureFactorOfFlow, roundedArea } from '@/lib/extrusion';
import { rounded, settingOf, spread, type MovingFigure } from './moving-figure';

/** What the push is compared with: 5 mm³/s through 0.40 mm. */
const USUAL = { flow: 5, bore: 0.4 };
/** Exponents of the melt: a simple liquid, and about what printing plastics show (motion sheet 4.5). */
const SIMPLE = 1;
const PLASTIC = 0.5;
const MELT_ZONE = 12e-3;
const MOLTEN = { just: 1e9 * meltLimit(MELT_ZONE, 0.3), well: 1e9 * meltLimit(MELT_ZONE, 0.5) };
const LINE = roundedArea(0.45e-3, 0.2e-3) * 1e6;

/** Push over the usual one, no unit, for a flow (mm³/s), a bore (mm) and an exponent. */
export function pushAt(flow: number, bore: number, exponent: number): number {
  return pressureFactorOfFlow(USUAL.flow, flow, exponent) * pressureFactor(USUAL.bore, bore, exponent);
}

const meltWords = (flow: number): string => (flow <= MOLTEN.well ? 'melts through' : flow <= MOLTEN.just ? 'only just melts' : 'does not melt to the middle');

export const pushAndFlow: MovingFigure = {
  title: 'What more flow, or a narrower bore, asks of the feeder',
  sliders: [
    { label: 'Flow', from: 1, to: 20, step: 0.5, start: 8, words: (value) => `${value} mm³/s` },
    { label: 'Bore of the nozzle', from: 0.3, to: 0.6, step: 0.05, start: 0.4, words: (value) => `${value.toFixed(2)} mm` },
  ],
  at: (values) => {
    const [flow, bore] = [settingOf(values, 0), settingOf(values, 1)];
    const [plastic, simple] = [pushAt(flow, bore, PLASTIC), pushAt(flow, bore, SIMPLE)];
    const line = (exponent: number) => spread(0.5, 20, 60).map((x) => ({ x, y: pushAt(x, bore, exponent) }));
    return {
      x: { words: 'flow, mm³/s', from: 0, to: 20 },
      y: { words: 'push, times that of 5 mm³/s through 0.40 mm', from: 0, to: Math.max(4, Math.ceil(plastic + 1)) },
      lines: [
        { name: 'printing plastic, about', as: 'strong', points: line(PLASTIC) },
        { name: 'a simple liquid', as: 'ghost', points: line(SIMPLE) },
      ],
      stretch: { name: 'melt limit', from: MOLTEN.well, to: MOLTEN.just },
      mark: { x: flow, y: plastic, words: `× ${rounded(plastic)}` },
      said: `${flow} mm³/s through ${bore.toFixed(2)} mm takes about ${rounded(plastic)} times the push of 5 mm³/s through 0.40 mm (${rounded(simple)} times if the melt were a simple liquid). It is a line of 0.45 × 0.2 mm at ${rounded(flow / LINE)} mm/s. A 12 mm hot zone melts ${rounded(MOLTEN.well)} to ${rounded(MOLTEN.just, 3)} mm³/s: this flow ${meltWords(flow)}.`,
    };
  },
  columns: ['push, about', 'line of 0.45 × 0.2 mm at', 'in a 12 mm hot zone'],
  row: (values) => {
    const flow = settingOf(values, 0);
    return [`× ${rounded(pushAt(flow, settingOf(values, 1), PLASTIC))}`, `${rounded(flow / LINE)} mm/s`, meltWords(flow)];
  },
  tabled: [2, 5, 8, 12, 16, 20],
  holds: 'One temperature, one plastic, exponent of the melt about 0.5. Good for comparing, not for setting.',
};
