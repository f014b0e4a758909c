import { describe, expect, it } from 'vitest';
import {
  CUBIC_FOOT_PER_MINUTE, airPower, curveFromEnds, networkAt, operatingPoint, plateConvection, roundJetSpeedRatio, shareAtOffset, type DuctNetwork,
} from '@/lib/airflow';
import published from '../../independent/airflow/values.json';
import { FOUR_CFM, MM, SHEET_AIR, findings, sheetDuct } from './given';

/** The duct of the worked example with the friction held at 0.07. */
function duct(slotArea: number, bend: number): DuctNetwork {
  const fitting = (label: string, group: 'bend' | 'friction', coefficient: number) => ({ kind: 'fitting' as const, label, group, coefficient, area: 300e-6 });
  const { outlets, ...rest } = sheetDuct(2.5, 15);
  return { ...rest, trunk: [fitting('wall', 'friction', 0.07), fitting('bend', 'bend', bend)], outlets: outlets.map((outlet) => ({ ...outlet, area: slotArea / 2 })) };
}

describe('what if, on the worked duct', () => {
  it('has every row of the table: flow, speed and thrust', () => {
    expect(published.whatIf).toHaveLength(13);
    expect(findings(published.whatIf.flatMap((row) => {
      const point = operatingPoint(curveFromEnds(150 * row.pressure, FOUR_CFM * row.freeFlow, 1), duct(row.area * 1e-6, row.bend), SHEET_AIR);
      const what = `${row.change}, ${row.area} mm²`;
      return [
        // Half a unit of the last digit printed, and a tenth of it for inputs that the sheet carries with five digits (kappa).
        { what: `${what}: CFM`, ours: point.flow / CUBIC_FOOT_PER_MINUTE, theirs: row.cfm, within: 0.0005 / row.cfm },
        { what: `${what}: speed`, ours: point.outlets[0]?.meanSpeed ?? Number.NaN, theirs: row.speed, within: 0.0055 / row.speed },
        { what: `${what}: thrust`, ours: 1000 * point.jetThrust, theirs: row.thrust, within: 0.0055 / row.thrust },
      ];
    }))).toEqual([]);
  });
});

describe('power in the air', () => {
  it('has its best efficiency of 65.3 % at 30,000 cfm on a textbook fan ("Introduction to Fluid Mechanics", ex. 10.11)', () => {
    // Inches of water at 20 °C, as the handbook constant of 6356 cfm·in/hp takes them.
    const [inchOfWater, horsepower] = [998.21 * 9.80665 * 0.0254, 745.69987];
    const { flow, pressure, power } = published.textbookFan;
    const efficiency = flow.map((thousands, k) => (100 * airPower((pressure[k] ?? 0) * inchOfWater, 1000 * thousands * CUBIC_FOOT_PER_MINUTE)) / ((power[k] ?? 1) * horsepower));
    const best = Math.max(...efficiency);
    expect(flow[efficiency.indexOf(best)]).toBe(30);
    expect(best).toBeCloseTo(65.3, 1);
  });

  it('ventilates a computer case ("Fluid Mechanics: Fundamentals and Applications", ex. 5-14)', () => {
    // 9.6 L/s through a hole of 5 cm; the profile's factor of 1.10 weighs on the density.
    const area = (Math.PI / 4) * 0.05 ** 2;
    const hole: DuctNetwork = { mode: 'static', fanOutletArea: 1, trunkArea: 1, trunk: [], leaks: [], outlets: [{ name: 'hole', ending: 'open', area, branchArea: area, dischargeCoefficient: 1, elements: [] }] };
    const state = networkAt(hole, { density: 1.1 * 1.2, viscosity: 1.8e-5 }, 15.78);
    const flow = state.outlets.reduce((sum, outlet) => sum + outlet.flow, 0);
    expect(findings([
      { what: 'flow', ours: flow, theirs: 9.6e-3, within: 4e-4 },
      { what: 'speed', ours: state.outlets[0]?.meanSpeed ?? Number.NaN, theirs: 4.889, within: 4e-4 },
      { what: 'air power', ours: airPower(15.78, flow), theirs: 0.15146, within: 1e-3 },
    ])).toEqual([]);
  });
});

describe('free jets', () => {
  it('keep their momentum: the decay constants that go with published half-widths', () => {
    // With the profile ∝ exp(−ln 2 · (r/r½)²), r½ = S·x: B² = 1 / (8 ∫ share²·r dr), K² = 1 / ∫ share² dy, at x = 1, by the mid-point rule.
    const step = 1e-4;
    const offsets = Array.from({ length: 8000 }, (_, k) => (k + 0.5) * step);
    const sum = (of: (r: number) => number): number => offsets.reduce((total, r) => total + of(r) * step, 0);
    const round = (spread: number): number => Math.sqrt(1 / (8 * sum((r) => shareAtOffset(r, spread) ** 2 * r)));
    const plane = (spread: number): number => Math.sqrt(1 / (2 * sum((y) => shareAtOffset(y, spread) ** 2)));
    expect(findings([
      { what: 'round .094', ours: round(0.094), theirs: 6.263, within: 1e-4 },
      { what: 'round .102', ours: round(0.102), theirs: 5.772, within: 1e-4 },
      { what: 'plane .10', ours: plane(0.1), theirs: 2.577, within: 2e-4 },
      { what: 'plane .11', ours: plane(0.11), theirs: 2.457, within: 3e-4 },
    ])).toEqual([]);
  });

  it('from a rectangular mouth decay as measured jets do, far out (FDS Verification Guide: √(b·h) / (m·x), m 0.12 to 0.20)', () => {
    // 15 × 2.5 mm at 60 mm: 0.851 to 0.510. Round jet of equal area with the constants of high Reynolds numbers, 5.8 to 6.3.
    const equalDiameter = Math.sqrt((4 * 15 * 2.5) / Math.PI) * MM;
    const ratios = [5.8, 6.3].map((core) => roundJetSpeedRatio(60 * MM, equalDiameter, core));
    expect(ratios.filter((ratio) => !(ratio > 0.51 && ratio < 0.851))).toEqual([]);
  });
});

it('a plate of 20 mm is cooled as the sheet says', () => {
  const air = { kinematicViscosity: 1.6e-5, conductivity: 0.0263, prandtl: 0.71 };
  expect(findings([[2, 38.95], [5, 61.58], [9, 82.62]].map(([speed = 0, h = 0]) => ({ what: `${speed} m/s`, ours: plateConvection(20 * MM, speed, air).coefficient, theirs: h, within: 0.006 / h })))).toEqual([]);
});
