import { describe, expect, it } from 'vitest';
import { betaBetween, betaResistance, betaTemperature, bladeGuesses, combBase, peakOffset, strongestTone, threePointConstants, threePointTemperature } from '@/lib/measuring';
import type { ThermistorPoint } from '@/lib/measuring';
import values from '../../independent/measuring/values.json';

const RATE = 48_000;

/** Levels in dB of the first `bins` bins of a Hann-windowed direct Fourier sum: a textbook definition, no code of ours. */
function spectrum(tones: readonly (readonly [frequency: number, height: number])[], size: number, bins: number): number[] {
  const samples = Array.from({ length: size }, (_, n) => {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size);
    return window * tones.reduce((sum, [frequency, height]) => sum + height * Math.sin((2 * Math.PI * frequency * n) / RATE + 0.3), 0);
  });
  return Array.from({ length: bins }, (_, k) => {
    let [real, imaginary] = [0, 0];
    for (const [n, sample] of samples.entries()) {
      const angle = (2 * Math.PI * k * n) / size;
      real += sample * Math.cos(angle);
      imaginary -= sample * Math.sin(angle);
    }
    return 10 * Math.log10(real * real + imaginary * imaginary + 1e-6);
  });
}

describe('fan tones', () => {
  it('pitfall 24: lie between bins, found to a sixtieth of one with a Hann window and logarithms', () => {
    const size = 2048;
    const width = RATE / size;
    for (const frequency of [1500, 1507.3, 1511.7]) {
      const tone = strongestTone(spectrum([[frequency, 1]], size, 100), width, 500, 2200);
      // 0.016 bin is the worst error in the sheet, section 9.
      expect(Math.abs((tone?.frequency ?? NaN) - frequency)).toBeLessThan(0.017 * width);
      expect(tone?.aboveNoise).toBeGreaterThan(10);
    }
  });

  it('belong to a comb whose base need not be the loudest', () => {
    const size = 2048;
    const levels = spectrum([[1200, 0.3], [2400, 1], [3600, 0.6], [4800, 0.4]], size, 260);
    expect(strongestTone(levels, RATE / size, 600, 5500)?.frequency).toBeCloseTo(2400, -1);
    expect(Math.abs((combBase(levels, RATE / size, 600, 5500)?.frequency ?? NaN) - 1200)).toBeLessThan(3);
  });

  it('give no tone where the range holds no bin', () => {
    expect(strongestTone([1, 2, 3], 10, 500, 600)).toBeUndefined();
    expect(peakOffset(1, 1, 1)).toBe(0);
    expect(peakOffset(0, 1, 0)).toBeCloseTo(0, 12);
  });

  it('leave several speeds while the blades are not counted, fewer with a rated speed', () => {
    expect(bladeGuesses(933.33, 'axial').find((guess) => guess.blades === 7)?.speed).toBeCloseTo(8000 / 60, 1);
    const all = bladeGuesses(2250, 'radial');
    const near = bladeGuesses(2250, 'radial', 75);
    expect(all.length).toBeGreaterThan(near.length);
    expect(near.some((guess) => guess.blades === 30)).toBe(true);
    expect(near.every((guess) => Math.abs(guess.speed / 75 - 1) <= 0.2)).toBe(true);
  });
});

describe('thermistors', () => {
  const points: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint] = [[298.15, 100e3], [423.15, 1770], [523.15, 230]];

  it('give the constants and the table of the sheet', () => {
    const constants = threePointConstants(points);
    for (const [index, constant] of values.thermistor.constants.entries()) expect((constants[index] ?? NaN) / constant).toBeCloseTo(1, 5);
    const wrong = values.thermistor.rows.flatMap(([celsius = 0, beta = 0, three = 0]) => {
      const kelvin = celsius + 273.15;
      // The printed resistances are rounded to whole ohms: up to half an ohm of 142.
      const okay = Math.abs(betaResistance(kelvin, 100e3, 3950) - beta) < 0.51 && Math.abs(threePointTemperature(three, points) - kelvin) < 0.2 && Math.abs(betaTemperature(beta, 100e3, 3950) - kelvin) < 0.2;
      return okay ? [] : [`${celsius} °C`];
    });
    expect(wrong).toEqual([]);
  });

  it('pitfall 25: a B for 25 and 50 °C reads 250 °C as 277.5 °C', () => {
    const [, falseHot = 0] = values.thermistor.falseHot;
    // 230 Ω is rounded: 0.5 Ω is 0.2 K.
    expect(Math.abs(betaTemperature(230, 100e3, 3950) - 273.15 - falseHot)).toBeLessThan(0.2);
    expect(betaBetween(points[0], points[1])).toBeCloseTo(values.thermistor.betas['25/150'], -0.5);
    expect(betaBetween(points[0], points[2])).toBeCloseTo(values.thermistor.betas['25/250'], -0.5);
  });

  it('refuse resistances that cannot be', () => {
    expect(() => betaTemperature(0, 100e3, 3950)).toThrow('above 0');
    expect(() => threePointTemperature(-5, points)).toThrow('above 0');
  });
});
