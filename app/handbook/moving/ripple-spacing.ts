import { distanceAfter, heightLeft, largestAmplitude, rippleSpacing, speedingUpDistance } from '@/lib/motion';
import { rounded, settingOf, spread, type MovingFigure } from './moving-figure';

const ACCELERATION = 3;
const JUNCTION = 0.005;
const DAMPING = 0.1;
/** Length of wall drawn, m. */
const WALL = 0.02;

/** Offset of the wall, m, t seconds after the corner. */
function offsetAt(time: number, frequency: number): number {
  return largestAmplitude(ACCELERATION, frequency) * heightLeft(DAMPING, frequency * time) * Math.cos(2 * Math.PI * frequency * time);
}

/** Spacing in steady travel, how far the nozzle gains speed, and the height of the swing at most; all in mm, from mm/s and Hz. */
export function ripplesAt(speed: number, frequency: number): { readonly spacing: number; readonly gaining: number; readonly height: number } {
  return {
    spacing: 1000 * rippleSpacing(speed / 1000, frequency),
    gaining: 1000 * speedingUpDistance(speed / 1000, JUNCTION, ACCELERATION),
    height: 1000 * largestAmplitude(ACCELERATION, frequency),
  };
}

export const ripplesAlongWall: MovingFigure = {
  title: 'The same swing, stretched by speed',
  sliders: [
    { label: 'Speed along the wall', from: 20, to: 200, step: 10, start: 100, words: (value) => `${value} mm/s` },
    { label: 'Frequency of the swing', from: 30, to: 100, step: 5, start: 50, words: (value) => `${value} Hz` },
  ],
  at: (values) => {
    const [speed, frequency] = [settingOf(values, 0), settingOf(values, 1)];
    const { spacing, gaining, height } = ripplesAt(speed, frequency);
    // The first crest in steady travel.
    const crest = Math.ceil(((speed / 1000 - JUNCTION) / ACCELERATION) * frequency + 0.01);
    const time = crest / frequency;
    const until = timeTo(WALL, speed / 1000);
    return {
      x: { words: 'distance from the corner, mm', from: 0, to: 1000 * WALL },
      y: { words: 'wall beside its line, mm', from: -0.2, to: 0.2 },
      lines: [{ name: 'wall', as: 'strong', points: spread(0, until, 400).map((t) => ({ x: 1000 * distanceAfter(t, speed / 1000, JUNCTION, ACCELERATION), y: 1000 * offsetAt(t, frequency) })) }],
      stretch: { name: 'gaining speed', from: 0, to: gaining },
      mark: { x: 1000 * distanceAfter(time, speed / 1000, JUNCTION, ACCELERATION), y: 1000 * offsetAt(time, frequency), words: `next crest ${rounded(spacing)} mm on` },
      said: `At ${speed} mm/s a swing of ${frequency} Hz leaves ripples ${rounded(spacing)} mm apart, at most ${rounded(height)} mm high. On the first ${rounded(gaining)} mm the nozzle still gains speed and they stand closer: do not measure there.`,
    };
  },
  columns: ['ripples apart', 'gaining speed on the first'],
  row: (values) => {
    const { spacing, gaining } = ripplesAt(settingOf(values, 0), settingOf(values, 1));
    return [`${rounded(spacing)} mm`, `${rounded(gaining)} mm`];
  },
  tabled: [40, 60, 80, 100, 150, 200],
  holds: 'Acceleration 3000 mm/s² from 5 mm/s at the corner, damping a tenth of critical. The height is the most that a corner can leave.',
};

/** Time, s, to travel a distance (m): the inverse of `distanceAfter`, by halving. */
function timeTo(distance: number, speed: number): number {
  let [low, high] = [0, 2 * (distance / speed + speed / ACCELERATION)];
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (distanceAfter(middle, speed, JUNCTION, ACCELERATION) < distance) low = middle;
    else high = middle;
  }
  return high;
}
