/** A tone found in a spectrum. */
export interface Tone {
  /** Hz. */
  readonly frequency: number;
  /** Height above the median of the spectrum, dB. */
  readonly aboveNoise: number;
}

/**
 * Place of a peak between bins, from the levels (dB or any logarithm) of the highest bin and its neighbours: the top of the
 * parabola through them, −0.5 to 0.5 bin. Use a Hann window and logarithms: worst error 0.016 bin, against 0.17 without a window.
 * Source: motion sheet 9. Levels 0, 1, 0 give 0. A flat triple gives 0.
 */
export function peakOffset(before: number, peak: number, after: number): number {
  const bend = before - 2 * peak + after;
  if (bend >= 0 || !Number.isFinite(bend)) return 0;
  return Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend));
}

/**
 * Strongest tone between two frequencies (Hz) in a spectrum of levels in dB, one per bin of `binWidth` Hz from 0. Undefined when
 * the range holds no bin with two neighbours. At least 10 dB above noise is worth believing (usual, no source).
 */
export function strongestTone(levels: readonly number[], binWidth: number, from: number, to: number): Tone | undefined {
  const best = bestBin(levels, binWidth, from, to, (bin) => level(levels, bin));
  if (best === undefined) return undefined;
  return toneAt(levels, binWidth, best);
}

/**
 * Base of a comb of tones: the frequency whose first `harmonics` multiples together are loudest. Each level is kept above
 * the floor (median level), so that one missing multiple does not rule the base out. Finds 1200 Hz from 1200, 2400, 3600, 4800 Hz
 * although 2400 is the loudest. Bound the range below: very low bases always have something on their multiples.
 */
export function combBase(levels: readonly number[], binWidth: number, from: number, to: number, harmonics = 4): Tone | undefined {
  const floor = medianOf(levels);
  const heard = (bin: number): number => {
    let total = 0;
    for (let multiple = 1; multiple <= harmonics; multiple += 1) {
      // A base between two bins drifts by half a bin per multiple, so the neighbours of each multiple count too.
      const reach = Math.floor(multiple / 2);
      let loudest = floor;
      for (let near = bin * multiple - reach; near <= bin * multiple + reach; near += 1) loudest = Math.max(loudest, level(levels, near));
      total += loudest - floor;
    }
    return total;
  };
  const best = bestBin(levels, binWidth, from, to, heard);
  return best === undefined ? undefined : toneAt(levels, binWidth, best);
}

/** A blade count and the speed that it would mean. */
export interface BladeGuess {
  readonly blades: number;
  /** Turns per second. */
  readonly speed: number;
}

/** Usual blade counts: axial fans 7, 9, 11; small radial blowers 25 to 40 (usual, no source; motion sheet 9). */
const USUAL_BLADES = { axial: [5, 7, 9, 11], radial: Array.from({ length: 16 }, (_, index) => 25 + index) } as const;

/**
 * Speeds (turns per second) that a blade tone (Hz) could mean while the blades are not counted, kept within 20 % of the rated speed
 * when that is known. Several remain for a blower: count the blades. Source: motion sheet 9.
 */
export function bladeGuesses(pitch: number, fan: 'axial' | 'radial', ratedSpeed?: number): readonly BladeGuess[] {
  return USUAL_BLADES[fan]
    .map((blades) => ({ blades, speed: pitch / blades }))
    .filter(({ speed }) => ratedSpeed === undefined || Math.abs(speed / ratedSpeed - 1) <= 0.2);
}

function bestBin(levels: readonly number[], binWidth: number, from: number, to: number, score: (bin: number) => number): number | undefined {
  let best: number | undefined;
  const last = Math.min(levels.length - 2, Math.floor(to / binWidth));
  for (let bin = Math.max(1, Math.ceil(from / binWidth)); bin <= last; bin += 1) {
    if (best === undefined || score(bin) > score(best)) best = bin;
  }
  return best;
}

function toneAt(levels: readonly number[], binWidth: number, bin: number): Tone {
  const offset = peakOffset(level(levels, bin - 1), level(levels, bin), level(levels, bin + 1));
  return { frequency: (bin + offset) * binWidth, aboveNoise: level(levels, bin) - medianOf(levels) };
}

function level(levels: readonly number[], bin: number): number {
  return levels[bin] ?? Number.NEGATIVE_INFINITY;
}

function medianOf(levels: readonly number[]): number {
  const sorted = levels.filter((value) => Number.isFinite(value)).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
