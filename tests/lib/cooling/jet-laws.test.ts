import { describe, expect, it } from 'vitest';
import { PRANDTL_NUMBER_OF_AIR, airOfPath, conductivityOfAir, drawInputs, inputLayout, readAirPath, roundJetConvection, samplePath, slotJetConvection, variantOfToday, viscosityOfAir } from '@/lib/airflow';
import { coefficientsTowards } from '@/lib/cooling';
import { findings, MM } from '../airflow/given';

/** Temperature of the film, K; what leaves without any fan, W/(m²·K) (sheet, section 9: 15 to 30). */
const [FILM, STILL_AIR] = [333, 18];
/** The same closed form twice; the product takes powers by its own exponential. */
const CLOSED = 1e-9;

/** What the product reckons on the side that faces one jet, all uncertain inputs at their middle, still air taken off; and the air it takes. */
function facingJet(mouth: Readonly<Record<string, string>>, speed: number) {
  const { value: path } = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, outlets: [{ name: 'a', direction: '90°', aimError: '0°', ...mouth }] }));
  if (path === undefined) throw new Error('the path should read');
  const drawn = drawInputs(inputLayout(1, 1), 1, 1);
  const inputs = { ...drawn, deviates: new Float64Array(drawn.deviates.length), multipliers: new Map<number, Map<number, Float64Array>>() };
  const variant = variantOfToday(path);
  const air = airOfPath(path);
  const sampled = samplePath(variant, air, inputs);
  const given = { ...sampled, outlets: sampled.outlets.map((outlet) => ({ ...outlet, speed: Float64Array.of(speed) })) };
  const [towards] = coefficientsTowards([Math.PI / 2], variant, given, air, inputs, FILM);
  const film = { kinematicViscosity: (viscosityOfAir(FILM) / air.density) * (FILM / 298.15), conductivity: conductivityOfAir(FILM), prandtl: PRANDTL_NUMBER_OF_AIR };
  return { coefficient: (towards?.[0] ?? Number.NaN) - STILL_AIR, film };
}

/*
 * Mouths within four diameters or widths of the part: the jet arrives undecayed, so the product's law is Martin's at the speed of the mouth.
 * The area reaches out to four short sides, at least 12 mm.
 */
describe('the laws that the product cools with', () => {
  it('are the round law of Martin under a round mouth', () => {
    expect(findings([[8, 24, 8], [5, 15, 20], [2, 8, 15]].map(([diameter = 1, distance = 1, speed = 1]) => {
      const { coefficient, film } = facingJet({ diameter: `${diameter} mm`, distance: `${distance} mm` }, speed);
      return { what: `round ${diameter} mm`, ours: coefficient, theirs: roundJetConvection(diameter * MM, speed, distance * MM, Math.max(4 * diameter, 12) * MM, film).coefficient, within: CLOSED };
    }))).toEqual([]);
  });

  it('are the slot law of Martin under a slot', () => {
    expect(findings([[6, 15, 6], [2.5, 10, 9], [4, 12, 12]].map(([width = 1, distance = 1, speed = 1]) => {
      const { coefficient, film } = facingJet({ width: '20 mm', height: `${width} mm`, distance: `${distance} mm` }, speed);
      return { what: `slot ${width} mm`, ours: coefficient, theirs: slotJetConvection(width * MM, speed, distance * MM, Math.max(4 * width, 12) * MM, film).coefficient, within: CLOSED };
    }))).toEqual([]);
  });
});
