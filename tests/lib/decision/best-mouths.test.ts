import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { airOfPath, bestOutletArea, fanBranchesOf, fanCurveOf, operatingPoint, readAirPath, variantOfToday, type Air, type AirPath, type PathVariant } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { bestMouthFactor, roomForMouths, withMouths } from '@/lib/decision/best-mouths';

const FAN = { kind: 'blower', claim: 'measured', freeFlow: '5 CFM', maxPressure: '160 Pa', outlet: { width: '20 mm', height: '12.2 mm' } };
const bends = (count: number): object[] => Array.from({ length: count }, () => ({ kind: 'mitre', angle: '90°' }));

function read(parts: object): AirPath {
  const { value, problems } = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, fan: FAN, leaks: [], ...parts }));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return value;
}

const tight = (mitres: number): AirPath => read({
  duct: { section: { width: '12 mm', height: '10 mm' }, length: '40 mm', bends: bends(mitres) },
  outlets: [{ name: 'a', width: '20 mm', height: '6 mm' }],
});

const PATHS: readonly [string, AirPath][] = [
  ['a tight duct with three mitres', tight(3)],
  ['the demo', read(JSON.parse(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8')) as object)],
  ['small mouths in a wide duct', read({ duct: { section: { width: '30 mm', height: '20 mm' }, length: '30 mm' }, outlets: [{ name: 'a', width: '5 mm', height: '2 mm' }, { name: 'b', diameter: '4 mm' }] })],
  ['two fans with ducts of their own', read({
    fan: { ...FAN, count: 2, arrangement: 'own-ducts', second: { ...FAN, freeFlow: '2 CFM', maxPressure: '60 Pa' } },
    duct: { section: { width: '20 mm', height: '12 mm' }, length: '30 mm', bends: bends(2) },
    outlets: [{ name: 'a', width: '20 mm', height: '6 mm', fan: 1 }, { name: 'b', width: '20 mm', height: '6 mm', fan: 2 }],
  })],
];

/** Force of all jets, N: density times flow times speed of each, from the operating points themselves. */
function thrust(variant: PathVariant, air: Air): number {
  const [first, second] = [variant.fan, variant.fan.second ?? variant.fan];
  const points = fanBranchesOf(variant).map(({ fan, network }) => operatingPoint(fanCurveOf(fan === 'second' ? { ...second, arrangement: 'single' } : { ...first, second: undefined, arrangement: 'single' }, air), network, air));
  return points.flatMap((point) => point.outlets).reduce((sum, outlet) => sum + air.density * outlet.flow * outlet.jetSpeed, 0);
}

describe('the area of the mouths at which the jets push hardest', () => {
  it.each(PATHS)('is the one that trying them all finds: %s', (_, path) => {
    const [variant, air] = [variantOfToday(path), airOfPath(path)];
    const room = roomForMouths(variant);
    const factors = Array.from({ length: 800 }, (_unused, k) => room * 1.005 ** -k);
    const thrusts = factors.map((factor) => thrust(withMouths(variant, factor), air));
    const most = Math.max(...thrusts);
    const best = factors[thrusts.indexOf(most)] ?? Number.NaN;
    const found = bestMouthFactor(variant, air);
    expect(Math.abs(found / best - 1)).toBeLessThan(0.025);
    expect(thrust(withMouths(variant, found), air) / most).toBeGreaterThan(0.9998);
    expect(found).toBeLessThan(room * 1.000001);
    const { bestOutletArea, outletArea } = compareAirOptions({ ...path, measured: [] }, [], { samples: 50 });
    expect(bestOutletArea / outletArea).toBeCloseTo(found, 12);
  });

  it('is smaller, not larger, the more the duct before them takes', () => {
    const areas = [0, 1, 3, 6].map((mitres) => bestMouthFactor(variantOfToday(tight(mitres)), airOfPath(tight(mitres))));
    expect(areas.every((area, k) => k === 0 || area < (areas[k - 1] ?? 0))).toBe(true);
  });

  it('comes near the closed form for a constant pressure, where a wide fan feeds a lossy duct: A² = k(mouth) / k(duct)', () => {
    const wide = read({ fan: { ...FAN, freeFlow: '40 L/s', maxPressure: '100 Pa' }, duct: { mode: 'static', section: { width: '12 mm', height: '10 mm' }, length: '0 mm', bends: bends(6) }, outlets: [{ name: 'a', width: '12 mm', height: '9 mm', ending: 'open' }] });
    // Six mitres of 1.2021 in 120 mm², the air leaving with 1 in the mouth: A = 120 / sqrt(7.2126) = 44.68 mm².
    expect((bestMouthFactor(variantOfToday(wide), airOfPath(wide)) * 108) / 44.68).toBeCloseTo(1, 1);
  });

  it.each(['line', 'parabola'] as const)('is that of the closed form where nothing but the mouth takes pressure, on a %s', (shape) => {
    const midPoint = { flow: '2 CFM', pressure: shape === 'line' ? '75 Pa' : '112.5 Pa' };
    const bare = read({ fan: { ...FAN, claim: 'data-sheet', freeFlow: '4 CFM', maxPressure: '150 Pa', midPoint }, duct: { mode: 'static', section: { width: '40 mm', height: '40 mm' }, length: '0 mm' }, outlets: [{ name: 'a', width: '10 mm', height: '10 mm', ending: 'open' }] });
    const { area } = bestOutletArea('momentum', shape, 150, bare.fan.freeFlow.value, 1.2);
    expect((bestMouthFactor(variantOfToday(bare), airOfPath(bare)) * 100e-6) / area).toBeCloseTo(1, 2);
  });
});

describe('opening the outlets', () => {
  const offered = (outlet: object, duct: object = {}): string[] => compareAirOptions(read({ duct: { section: { width: '20 mm', height: '12 mm' }, length: '30 mm', ...duct }, outlets: [{ name: 'a', ...outlet }] }), [], { samples: 50 })
    .options.filter((option) => option.kind === 'open-outlets').map((option) => option.title);

  it('is offered where larger mouths push harder, up to twice their area, and not where they would push less', () => {
    expect(offered({ width: '8 mm', height: '4 mm' })).toEqual(['Open the outlets to 2.0 times their area']);
    expect(offered({ width: '18 mm', height: '9 mm' }, { bends: bends(4) })).toEqual([]);
  });

  it('ends at nine tenths of the last piece before the mouth, not of the first', () => {
    // 20 × 12 mm narrows to 10 × 6 mm: 54 mm² is the most, 1.35 times 40 mm².
    expect(offered({ width: '10 mm', height: '4 mm' }, { changes: [{ width: '10 mm', height: '6 mm' }] })).toEqual(['Open the outlets to 1.4 times their area']);
    expect(offered({ width: '10 mm', height: '5.2 mm' }, { changes: [{ width: '10 mm', height: '6 mm' }] })).toEqual([]);
  });
});
