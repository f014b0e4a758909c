import { describe, expect, it } from 'vitest';
import {
  CUBIC_FOOT_PER_MINUTE, airOfPath, conicalContractionLoss, contractionLoss, diffuserLoss, drawInputs, expansionLoss, fanBranchesOf, fanCurveOf, inputLayout, networkAt,
  operatingPoint, readAirPath, samplePath, sharedColumn, variantOfToday, type AirPath, type LossGroup, type OperatingPoint, type SampledPath,
} from '@/lib/airflow';
import library from '../../independent/airflow/library-values.json';
import { SHEET_AIR, findings } from './given';

const FAN = { kind: 'blower', claim: 'measured', freeFlow: '1 L/s', maxPressure: '120 Pa', outlet: { width: '20 mm', height: '12 mm' } };
const DUCT = { section: { width: '20 mm', height: '12 mm' }, length: '30 mm' };
const MOUTH = { width: '14 mm', height: '4 mm', distance: '14 mm' };
const mouth = (name: string, more: object = {}): object => ({ name, ...MOUTH, ...more });

function read(parts: object): AirPath {
  const { value, problems } = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, fan: FAN, duct: DUCT, outlets: [mouth('a'), mouth('b')], leaks: [], ...parts }));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return value;
}

function solved(path: AirPath): OperatingPoint {
  const [branch] = fanBranchesOf(variantOfToday(path));
  if (branch === undefined) throw new Error('a branch expected');
  return operatingPoint(fanCurveOf(path.fan, airOfPath(path)), branch.network, airOfPath(path));
}

/** The samples with all deviates 0: the most likely path. */
function middle(path: AirPath): SampledPath {
  const inputs = drawInputs(inputLayout(1, 1), 2, 1);
  return samplePath(variantOfToday(path), airOfPath(path), { ...inputs, multipliers: new Map(), deviates: new Float64Array(inputs.deviates.length) });
}

const branch = (more: object): object => ({ section: { width: '12 mm', height: '8 mm' }, length: '25 mm', ...more });

/** Every element of a path as it is written in the file, the group that it is listed under, and a word of its label. */
const ELEMENTS: readonly [string, object, LossGroup, RegExp][] = [
  ['wall friction with a given roughness', { duct: { ...DUCT, roughness: '0.1 mm' } }, 'friction', /wall friction, duct/u],
  ['a mitre bend', { duct: { ...DUCT, bends: [{ kind: 'mitre', angle: '90°' }] } }, 'bend', /bend 1, duct/u],
  ['a radius bend', { outlets: [mouth('a', { branch: branch({ bends: [{ kind: 'radius', angle: '90°', radius: '12 mm' }] }) }), mouth('b')] }, 'bend', /bend 1, a/u],
  ['a step to a narrower piece', { duct: { ...DUCT, changes: [{ width: '14 mm', height: '10 mm', length: '20 mm' }] } }, 'contraction', /narrowing 1, duct/u],
  ['a taper to a narrower piece', { duct: { ...DUCT, changes: [{ width: '14 mm', height: '10 mm', angle: '40°' }] } }, 'contraction', /narrowing 1, duct/u],
  ['a sudden widening', { duct: { ...DUCT, changes: [{ width: '24 mm', height: '16 mm' }] } }, 'expansion', /widening 1, duct/u],
  ['a diffuser', { outlets: [mouth('a', { branch: branch({ changes: [{ width: '14 mm', height: '10 mm', angle: '10°' }] }) }), mouth('b')] }, 'expansion', /widening 1, a/u],
  ['a mouth with a short land', { outlets: [mouth('a', { ending: 'land' }), mouth('b')] }, 'contraction', /narrowing, a/u],
  ['a thin-walled slot', { outlets: [mouth('a', { ending: 'thin' }), mouth('b')] }, 'slot', /thin slot, a/u],
  ['a thin-walled slot that leaves most of its branch open', { outlets: [mouth('a', { ending: 'thin', width: '12 mm', height: '7 mm', branch: branch({}) }), mouth('b')] }, 'slot', /thin slot, a/u],
  ['a thin-walled slot wider than its branch', { outlets: [mouth('a', { ending: 'thin', height: '10 mm', branch: branch({}) }), mouth('b')] }, 'expansion', /^widening, a/u],
  ['a tapered mouth', { outlets: [mouth('a', { ending: 'tapered' }), mouth('b')] }, 'contraction', /narrowing, a/u],
  ['a duct that simply ends', { outlets: [mouth('a', { ending: 'open' }), mouth('b')] }, 'exit', /air leaving, a/u],
  ['a mouth wider than its branch', { outlets: [mouth('a', { height: '10 mm', branch: branch({}) }), mouth('b')] }, 'expansion', /widening, a/u],
  ['a mouth with a grille that leaves seven tenths open', { outlets: [mouth('a', { open: '70 %' }), mouth('b')] }, 'contraction', /narrowing, a/u],
  ['a gap at the fan', { leaks: [{ at: 'fan', area: '6 mm²' }] }, 'leak', /leak/u],
  ['a gap at the fork', { leaks: [{ at: 'fork', length: '20 mm', gap: '0.3 mm' }] }, 'leak', /leak/u],
  ['a wide gap at the fork', { leaks: [{ at: 'fork', area: '120 mm²' }] }, 'leak', /leak/u],
  ['a wide gap at an outlet', { leaks: [{ at: 'b', area: '60 mm²' }] }, 'leak', /leak/u],
  ['a gap at an outlet', { leaks: [{ at: 'b', area: '6 mm²' }] }, 'leak', /leak/u],
  ['branches narrower than the duct', { outlets: [mouth('a', { branch: branch({}) }), mouth('b', { branch: branch({}) })] }, 'contraction', /^step into the branches$/u],
  ['branches wider than the duct', { duct: { ...DUCT, section: { width: '12 mm', height: '9 mm' } }, outlets: [mouth('a', { branch: branch({}) }), mouth('b', { branch: branch({}) })] }, 'expansion', /^step into the branches$/u],
  ['one branch beside an outlet without', { outlets: [mouth('a', { branch: branch({ section: { width: '8 mm', height: '6 mm' } }) }), mouth('b')] }, 'contraction', /^step into the branches$/u],
  ['the seam of a fan larger than the duct', { duct: { ...DUCT, section: { width: '16 mm', height: '10 mm' } } }, 'contraction', /step from fan to duct/u],
];

describe('every element of a path', () => {
  it.each(ELEMENTS)('is written in the file, solved and listed among the losses: %s', (_, parts, group, label) => {
    const shares = solved(read(parts)).lossShares;
    const own = shares.filter((loss) => loss.group === group && label.test(loss.label));
    expect(own.map((loss) => loss.share > 0)).toEqual([true]);
    expect(shares.reduce((sum, loss) => sum + loss.share, 0)).toBeCloseTo(1, 9);
  });

  it.each(ELEMENTS)('is the same to the samples as to the full solver, within a thousandth: %s', (_, parts) => {
    const path = read(parts);
    const full = solved(path);
    const sampled = middle(path);
    expect(findings([
      { what: 'flow', ours: sampled.flow[1] ?? 0, theirs: full.flow, within: 0.001 },
      ...full.outlets.map((outlet, k) => ({ what: outlet.name, ours: sampled.outlets[k]?.speed[1] ?? 0, theirs: outlet.jetSpeed, within: 0.001 })),
    ])).toEqual([]);
    expect(Math.abs((sampled.leakFlow[1] ?? 0) - full.leakFlow)).toBeLessThan(0.001 * full.flow);
  });

  it('may have one to four outlets, which share out all of the air', () => {
    for (const count of [1, 2, 3, 4]) {
      const path = read({ outlets: Array.from({ length: count }, (_, k) => mouth(`outlet ${k + 1}`)) });
      const point = solved(path);
      expect(point.outlets).toHaveLength(count);
      expect(point.outlets.reduce((sum, outlet) => sum + outlet.flow, 0) / point.flow).toBeCloseTo(1, 9);
    }
  });
});

describe('gaps', () => {
  it('just before an open end take their share of the area: 0.61 · 20 of 100 + 0.61 · 20 mm²', () => {
    const network = { mode: 'static' as const, fanOutletArea: 1, trunkArea: 1, trunk: [], leaks: [], outlets: [{ name: 'a', ending: 'open' as const, area: 100e-6, branchArea: 100e-6, dischargeCoefficient: 1, elements: [], leakArea: 20e-6 }] };
    const state = networkAt(network, SHEET_AIR, 50);
    expect((state.outlets[0]?.flow ?? 0) / state.flowFromFan).toBeCloseTo(100 / (100 + 0.61 * 20), 9);
    expect(state.leakFlow / state.flowFromFan).toBeCloseTo(12.2 / 112.2, 9);
  });

  it('at one outlet take from that outlet first, and the more the wider they are', () => {
    const outlets = ['a', 'b'].map((name) => mouth(name, { branch: branch({}) }));
    const points = [0, 3, 8, 20, 60].map((area) => solved(read({ outlets, leaks: area === 0 ? [] : [{ at: 'b', area: `${area} mm²` }] })));
    const speeds = points.map((point) => point.outlets.map((outlet) => outlet.meanSpeed));
    expect(points.every((point, k) => k === 0 || point.leakFlow > (points[k - 1]?.leakFlow ?? 0))).toBe(true);
    expect(speeds.every(([, b = 0], k) => k === 0 || b < (speeds[k - 1]?.[1] ?? 0))).toBe(true);
    expect((speeds[3]?.[1] ?? 0) / (speeds[0]?.[1] ?? 1)).toBeLessThan((speeds[3]?.[0] ?? 0) / (speeds[0]?.[0] ?? 1));
  });
});

describe('a thin slot', () => {
  /** One slot of 20 mm at the end of a duct of 20 × 12 mm. */
  const slot = (height: number, ending: string): OperatingPoint => solved(read({ outlets: [mouth('a', { width: '20 mm', height: `${height} mm`, ending })] }));

  it('as wide as its duct is a duct that ends, and comes to it without a jump', () => {
    expect(slot(12, 'thin').flow / slot(12, 'open').flow).toBeCloseTo(1, 9);
    expect(slot(11.99, 'thin').flow / slot(12, 'open').flow).toBeCloseTo(1, 2);
    expect(slot(12, 'thin').outlets[0]?.jetSpeed).toBe(slot(12, 'thin').outlets[0]?.meanSpeed);
  });

  it('in a wide wall keeps 0.61 of its area, and more the less it closes the duct, as Weisbach has it', () => {
    const kept = (height: number): number => { const [outlet] = slot(height, 'thin').outlets; return (outlet?.meanSpeed ?? 0) / (outlet?.jetSpeed ?? 1); };
    expect(findings([
      { what: 'wide wall', ours: kept(0.6), theirs: 0.61, within: 1e-3 },
      // Weisbach's own 0.63 + 0.37·s³ begins 3 % higher.
      ...[3, 6, 9, 11].map((height) => ({ what: `s ${height}/12`, ours: kept(height), theirs: 0.63 + 0.37 * (height / 12) ** 3, within: 0.034 })),
    ])).toEqual([]);
  });

  it('turns all of the pressure before it into the speed of the jet, whose thrust and power count', () => {
    const path = read({ outlets: [mouth('a', { width: '20 mm', height: '8 mm', ending: 'thin' })] });
    const { density } = airOfPath(path);
    const [branchOfPath] = fanBranchesOf(variantOfToday(path));
    if (branchOfPath === undefined) throw new Error('a branch expected');
    const [outlet] = networkAt({ ...branchOfPath.network, trunk: [] }, airOfPath(path), 40).outlets;
    expect(outlet?.jetSpeed).toBeCloseTo(Math.sqrt(80 / density), 9);
    const point = solved(path);
    const [jet] = point.outlets;
    expect(point.jetThrust / (density * point.flow * (jet?.jetSpeed ?? 0))).toBeCloseTo(1, 9);
    expect(point.jetPower / ((density / 2) * point.flow * (jet?.jetSpeed ?? 0) ** 2)).toBeCloseTo(1, 9);
  });

  it('is less uncertain the less it contracts: not at all at the end of a duct', () => {
    const spread = (height: number): number => {
      const path = read({ outlets: [mouth('a', { width: '20 mm', height: `${height} mm`, ending: 'thin' })] });
      const inputs = drawInputs(inputLayout(1, 1), 3, 1);
      const only = { ...inputs, multipliers: new Map<number, Map<number, Float64Array>>(), deviates: new Float64Array(inputs.deviates.length) };
      sharedColumn(only, 'discharge').set([-1, 0, 1]);
      const [outlet] = samplePath(variantOfToday(path), airOfPath(path), only).outlets;
      const keptAt = (s: number): number => (outlet?.flow[s] ?? 0) / (outlet?.speed[s] ?? 1);
      return Math.log(keptAt(2) / keptAt(0)) / 2;
    };
    // In a wide wall the whole 5 % of the coefficient; at s = 0.75, 0.61·(1 - s³) of 0.61 + 0.39·s³.
    const s = 0.75 ** 3;
    expect(findings([{ what: 'wide', ours: spread(0.6), theirs: 0.05, within: 2e-3 }, { what: 'three quarters', ours: spread(9), theirs: (0.05 * 0.61 * (1 - s)) / (0.61 + 0.39 * s), within: 2e-3 }])).toEqual([]);
    expect(spread(12)).toBeCloseTo(0, 12);
  });
});

describe('a piece of duct', () => {
  it.each([['narrower', '10 mm', '6 mm'], ['much narrower', '8 mm', '4 mm'], ['wider', '24 mm', '16 mm']])('costs the same entered as a branch as it does entered as a change of the duct: %s', (_, width, height) => {
    const outlet = mouth('a', { width: '8 mm', height: '3 mm' });
    const asChange = solved(read({ duct: { ...DUCT, changes: [{ width, height, length: '25 mm' }] }, outlets: [outlet] }));
    const asBranch = solved(read({ outlets: [{ ...outlet, branch: { section: { width, height }, length: '25 mm' } }] }));
    expect(asBranch.flow / asChange.flow).toBeCloseTo(1, 9);
  });

  it('that narrows into two equal branches costs 0.5 (1 - s) on their common speed', () => {
    const path = read({ outlets: [mouth('a', { branch: branch({ section: { width: '10 mm', height: '6 mm' } }) }), mouth('b', { branch: branch({ section: { width: '10 mm', height: '6 mm' } }) })] });
    const point = solved(path);
    // 240 to 2 × 60 mm²: 0.5 · (1 - 0.5) = 0.25 on the speed in 120 mm²; its power is its pressure times the flow.
    const power = 0.25 * (airOfPath(path).density / 2) * (point.flow / 120e-6) ** 2 * point.flow;
    const exit = point.lossShares.filter((loss) => loss.group === 'exit').reduce((sum, loss) => sum + loss.share, 0);
    expect((point.lossShares.find((loss) => loss.label === 'step into the branches')?.share ?? 0) / exit).toBeCloseTo(power / point.jetPower, 6);
  });

  it('that goes on as wide as its branches together costs nothing at the fork', () => {
    expect(solved(read({ outlets: ['a', 'b'].map((name) => mouth(name, { branch: branch({ section: { width: '12 mm', height: '10 mm' } }) })) })).lossShares.map((loss) => loss.label)).not.toContain('step into the branches');
  });
});

describe('changes of section', () => {
  it('cost nothing when the section stays as it was', () => {
    const straight = solved(read({})).flow;
    expect(solved(read({ duct: { ...DUCT, changes: [{ width: '20 mm', height: '12 mm' }] } })).flow / straight).toBeCloseTo(1, 9);
  });

  it('cost less with sloping walls than as a step', () => {
    const flow = (angle: object): number => solved(read({ duct: { ...DUCT, changes: [{ width: '10 mm', height: '6 mm', ...angle }] } })).flow;
    expect(flow({ angle: '40°' })).toBeGreaterThan(1.02 * flow({}));
  });

  it('are told when there are too many', () => {
    const changes = Array.from({ length: 5 }, () => ({ width: '12 mm', height: '8 mm' }));
    expect(readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, duct: { ...DUCT, changes } })).problems.map((problem) => problem.code)).toContain('too-many-changes');
  });

  // Rennels' correlations from a library; ours are straight lines between some of the same points, as a share of our own step.
  it('follow the shares of the library: cones within 0.03 of a step, diffusers within 0.09', () => {
    const sharp = new Map(library.fittings.contraction_sharp.map(([s = 0, k = 0]) => [s, k]));
    const apart = [
      ...library.fittings.contraction_cone.map(([s = 0, angle = 0, k = 0]) => ({ what: `cone ${s} ${angle}°`, by: conicalContractionLoss(s, (angle * Math.PI) / 180) / contractionLoss(s) - k / (sharp.get(s) ?? 1), within: 0.03 })),
      ...library.fittings.diffuser.map(([r = 1, angle = 0, k = 0]) => ({ what: `diffuser ${r} ${angle}°`, by: (diffuserLoss(1 / r, (angle * Math.PI) / 180) - k) / expansionLoss(1 / r), within: 0.09 })),
    ];
    expect(apart.length).toBeGreaterThan(25);
    expect(apart.filter(({ by, within }) => Math.abs(by) > within)).toEqual([]);
  });
});

describe('every way to describe a fan', () => {
  const points = [['0 L/s', '120 Pa'], ['0.5 L/s', '80 Pa'], ['1 L/s', '0 Pa']].map(([flow, pressure]) => ({ flow, pressure }));
  const stalled = [['0 L/s', '120 Pa'], ['0.2 L/s', '70 Pa'], ['0.4 L/s', '80 Pa'], ['1 L/s', '0 Pa']].map(([flow, pressure]) => ({ flow, pressure }));
  const { freeFlow, maxPressure, ...bare } = FAN;
  const WAYS: readonly [string, object, number][] = [
    // Share of the largest pressure at half of the free flow: by hand from the points, the exponent or the middle of the band.
    ['points, shape-keeping between them', { ...bare, points }, 80 / 120],
    ['points of an axial fan with its stall marked', { ...bare, kind: 'axial', points: stalled, stall: true }, Number.NaN],
    ['a table as text', { ...bare, points: 'flow (L/s); pressure (Pa)\n0; 120\n0,5; 80\n1; 0' }, 80 / 120],
    ['both ends, with a band for the shape', { ...bare, freeFlow, maxPressure }, 1 - 0.5 * 0.5 - 0.5 * 0.25],
    ['both ends and one point between', { ...bare, freeFlow, maxPressure, midPoint: { flow: '0.5 L/s', pressure: '90 Pa' } }, 0.75],
    ['free flow and frame alone', { ...bare, frame: '50 x 15', freeFlow }, 0.625],
    ['frame and speed alone', { ...bare, frame: '50 x 15', speed: '5000 rpm' }, 0.625],
  ];

  it.each(WAYS)('is read from the file and solved: %s', (_, fan, atHalf) => {
    const path = read({ fan });
    const curve = fanCurveOf(path.fan, airOfPath(path));
    if (Number.isNaN(atHalf)) expect(curve.stallShare).toBeCloseTo(0.4, 9);
    else expect(curve.shape(0.5)).toBeCloseTo(atHalf, 6);
    const full = solved(path);
    expect(Math.abs((middle(path).flow[1] ?? 0) / full.flow - 1)).toBeLessThan(0.002);
  });

  it('has pairs in series, in parallel and on ducts of their own, in the order that an open and a tight duct ask for', () => {
    const flowOf = (height: string, arrangement: object): number => {
      const path = read({ fan: { ...FAN, ...arrangement }, outlets: [mouth('a', { height }), mouth('b', { height })] });
      return middle(path).flow[1] ?? 0;
    };
    const pair = (arrangement: string): object => ({ count: 2, arrangement });
    expect(flowOf('1 mm', pair('series'))).toBeGreaterThan(flowOf('1 mm', pair('parallel')));
    expect(flowOf('8 mm', pair('parallel'))).toBeGreaterThan(flowOf('8 mm', pair('series')));
    expect(flowOf('4 mm', pair('own-ducts'))).toBeGreaterThan(flowOf('4 mm', {}));
  });

  it('moves more air when the motion at the fan is credited, and a tenth more volts turn it faster', () => {
    const flow = (parts: object): number => solved(read(parts)).flow;
    expect(flow({ duct: { ...DUCT, mode: 'total' } })).toBeGreaterThan(flow({ duct: { ...DUCT, mode: 'static' } }));
    // Speed goes with voltage^1.08 (two data sheets), flow with speed on a duct that is nearly quadratic.
    expect(flow({ fan: { ...FAN, voltage: '24 V', supply: '26.4 V' } }) / flow({})).toBeCloseTo(1.1 ** 1.08, 2);
  });

  it('is trusted by where its figures come from: a data sheet by fifteen percent, an advertisement by forty-five', () => {
    const shareOf = (claim: string): number => { const { value, plusMinus } = read({ fan: { ...FAN, claim, freeFlow: '4.00000 CFM' } }).fan.freeFlow; return plusMinus / value; };
    expect(['measured', 'data-sheet', 'advertised'].map((claim) => Math.round(100 * shareOf(claim)))).toEqual([8, 15, 45]);
    expect(read({ fan: { ...FAN, freeFlow: '4 CFM' } }).fan.freeFlow.value / CUBIC_FOOT_PER_MINUTE).toBeCloseTo(4, 9);
  });
});
