import { polymerNamed, topLayerTemperature, type PrintTask } from '@/lib/cooling';
import type { Point } from '../../_drawings/arrows';
import { Sheet } from '../../_drawings/sheet';
import { StackDrawing } from '../../_drawings/stack-drawing';
import { rounded, settingOf, spread, type MovingFigure } from './moving-figure';

const CELSIUS = 273.15;
const TASK: Omit<PrintTask, 'layerTime'> = { polymer: 'PLA', layerHeight: 0.2e-3, nozzleTemperature: 210 + CELSIUS, airTemperature: 25 + CELSIUS };
const HOLDS_AT = polymerNamed('PLA').holdsShapeAt - CELSIUS;

/** Temperature, °C, of the top layer when the next one arrives, for a layer time (s) and a coefficient (W/(m²·K)). */
export function topLayerAt(layerTime: number, coefficient: number): number {
  return topLayerTemperature({ ...TASK, layerTime }, coefficient) - CELSIUS;
}

/** Degrees above the limit at which the drawn curl is as large as it is drawn. A choice of the drawing, not a result. */
const FULL_CURL = 60;

/* A curve costs some 40 ms on a phone; the few that there are are reckoned once. */
const curves = new Map<number, readonly Point[]>();
function curveOf(coefficient: number): readonly Point[] {
  const known = curves.get(coefficient) ?? spread(2, 30, 20).map((time) => ({ x: time, y: topLayerAt(time, coefficient) }));
  curves.set(coefficient, known);
  return known;
}

const AIR_WORDS: Readonly<Record<number, string>> = { 50: 'weak', 75: 'ordinary', 100: 'good', 125: 'very good', 150: 'very good' };

export const layerTimeAndCurl: MovingFigure = {
  title: 'A layer that is covered too soon is still soft',
  sliders: [
    { label: 'Time per layer', from: 2, to: 30, step: 1, start: 6, words: (value) => `${value} s` },
    { label: 'Air on the part', from: 50, to: 150, step: 25, start: 75, words: (value) => `${value} W/(m²·K), ${AIR_WORDS[value] ?? ''}` },
  ],
  at: (values) => {
    const [time, air] = [settingOf(values, 0), settingOf(values, 1)];
    const temperature = topLayerAt(time, air);
    const above = temperature - HOLDS_AT;
    const curl = Math.round(Math.min(1, Math.max(0, above / FULL_CURL)) * 20) / 20;
    return {
      x: { words: 'time per layer, s', from: 0, to: 30 },
      y: { words: 'top layer when it is covered, °C', from: 20, to: 180 },
      lines: [
        { name: `air ${air} W/(m²·K)`, as: 'strong', points: curveOf(air) },
        { name: `PLA holds its shape below ${rounded(HOLDS_AT)} °C`, as: 'limit', points: [{ x: 0, y: HOLDS_AT }, { x: 30, y: HOLDS_AT }] },
      ],
      mark: { x: time, y: temperature, words: `${rounded(temperature, 3)} °C` },
      said: `After ${time} s the top layer is still at ${rounded(temperature, 3)} °C: ${above > 0 ? `${rounded(above)} K too warm to hold its shape. It curls.` : `${rounded(-above)} K below where it begins to give. It holds.`}`,
      beside: (
        <figure className="moving-beside">
          <Sheet width={200} height={150} label={curl > 0 ? 'Stack of layers, the left edge curled up' : 'Stack of layers, the edge flat'}>
            <StackDrawing spec={{ show: 'stack', shape: 'overhang', layers: 9, curl }} plate={{ id: 'moving-curl', width: 200, height: 150, size: 'figure' }} />
          </Sheet>
          <figcaption className="label">The curl is drawn by how far the layer is above its limit. How large it really gets is not reckoned.</figcaption>
        </figure>
      ),
    };
  },
  columns: ['top layer when covered', 'against its limit'],
  row: (values) => {
    const temperature = topLayerAt(settingOf(values, 0), settingOf(values, 1));
    return [`${rounded(temperature, 3)} °C`, temperature > HOLDS_AT ? `${rounded(temperature - HOLDS_AT)} K too warm` : `holds, ${rounded(HOLDS_AT - temperature)} K to spare`];
  },
  tabled: [3, 6, 10, 16, 24],
  holds: 'PLA, layers of 0.2 mm laid at 210 °C, air at 25 °C, forty layers deep, a part too wide to lose heat at its sides.',
};
