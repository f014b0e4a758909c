import { describe, expect, it } from 'vitest';
import {
  CUBIC_FOOT_PER_MINUTE, DISCHARGE_COEFFICIENT, airAt, areaOf, bestOutletArea, contractionLoss, credibilityOf, curveAtSpeed, curveFromEnds, curveFromPoints, densityOfAir,
  expansionLoss, fanBranchesOf, frictionFactor, hydraulicDiameterOf, networkAt, operatingPoint, pressureOnCurve, readAdvertisement, readAirPath, readFanPoints, shaftPowerAtSpeed,
  slotJetConvection, speedRatioAtVoltage, thinSlotLoss, twoFansInParallel, twoFansInSeries, variantOfToday, viscosityOfAir, type DuctNetwork, type OperatingPoint,
} from '@/lib/airflow';
import { biotNumber, fitOneLobe, neededCoefficient, radiationCoefficient } from '@/lib/cooling';
import { combine } from '@/lib/measuring';
import { formatMeasured, readQuantity } from '@/lib/units';
import { FOUR_CFM, SHEET_AIR, sheetDuct } from './given';

const line = curveFromEnds(150, FOUR_CFM, 1);
const parabola = curveFromEnds(150, FOUR_CFM, 2);
const circle = { shape: 'circle', diameter: 0.01 } as const;

/** A loss-free piece of the fan's own outlet, 300 mm². */
function straightOn(mode: DuctNetwork['mode']): DuctNetwork {
  return { mode, fanOutletArea: 300e-6, trunkArea: 300e-6, trunk: [], leaks: [], outlets: [{ name: 'end', ending: 'open', area: 300e-6, branchArea: 300e-6, dischargeCoefficient: 1, elements: [] }] };
}

describe('the twenty-seven known mistakes', () => {
  it('1: a curve is not extended past free flow, and no flow is negative', () => {
    expect(() => pressureOnCurve(line, 1.01 * FOUR_CFM)).toThrow(/expected 0 to/u);
    expect(() => pressureOnCurve(line, -1e-5)).toThrow(/expected 0 to/u);
  });
  it('2: the exit loss is not counted against a pressure that already has it', () => {
    expect(operatingPoint(line, straightOn('total'), SHEET_AIR).shareOfFreeFlow).toBeCloseTo(1, 6);
    expect(operatingPoint(line, straightOn('total'), SHEET_AIR).remarks).toContain('free-flow');
    expect(operatingPoint(line, straightOn('static'), SHEET_AIR).shareOfFreeFlow).toBeCloseTo(0.878, 3);
    expect(operatingPoint(parabola, straightOn('static'), SHEET_AIR).shareOfFreeFlow).toBeCloseTo(0.929, 3);
  });
  it('3: the speed of the leaving air is paid once', () => {
    const state = networkAt(straightOn('static'), SHEET_AIR, 10);
    expect((SHEET_AIR.density / 2) * (state.outlets[0]?.meanSpeed ?? 0) ** 2).toBeCloseTo(10, 9);
  });
  it('4: a contraction is on the small side, an expansion on the upstream side', () => {
    expect(contractionLoss(0.25)).toBeCloseTo(0.375, 12);
    expect(expansionLoss(0.25)).toBeCloseTo(0.5625, 12);
    const state = networkAt(sheetDuct(2.5, 15, { frictionless: true }), SHEET_AIR, 100);
    expect((SHEET_AIR.density / 2) * (state.outlets[0]?.meanSpeed ?? 0) ** 2 * 1.375).toBeCloseTo(100, 6);
  });
  it('5: outer sizes give a third more area than inner ones', () => {
    const areaOfMouth = (height: string): number => {
      const path = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, outlets: [{ name: 'a', width: '15 mm', height }] })).value;
      return path === undefined ? Number.NaN : (fanBranchesOf(variantOfToday(path))[0]?.network.outlets[0]?.area ?? Number.NaN);
    };
    // A slot of 2.5 mm between walls of 0.4 mm (sheet, section 13).
    expect(areaOfMouth('3.3 mm') / areaOfMouth('2.5 mm')).toBeCloseTo(1.32, 12);
    const outer = operatingPoint(line, sheetDuct(3.3, 15), SHEET_AIR).flow;
    expect(outer / operatingPoint(line, sheetDuct(2.5, 15), SHEET_AIR).flow).toBeGreaterThan(1.15);
  });
  it('6: a grille or hub is taken off the area, because less area means less flow', () => {
    const free = operatingPoint(line, sheetDuct(2.5, 15), SHEET_AIR).flow;
    expect(operatingPoint(line, sheetDuct(2.5 * 0.7, 15), SHEET_AIR).flow).toBeLessThan(0.85 * free);
    const areaOfFile = (open: object): number => {
      const path = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, outlets: [{ name: 'a', width: '15 mm', height: '2.5 mm', ...open }] })).value;
      return path === undefined ? Number.NaN : (fanBranchesOf(variantOfToday(path))[0]?.network.outlets[0]?.area ?? Number.NaN);
    };
    expect(areaOfFile({ open: '70 %' }) / areaOfFile({})).toBeCloseTo(0.7, 12);
    expect(areaOfFile({})).toBeCloseTo(37.5e-6, 12);
  });
  it('7: the hydraulic diameter is no diameter for the area', () => {
    const section = { shape: 'rectangle', width: 0.015, height: 0.02 } as const;
    expect(areaOf(section)).toBeCloseTo(300e-6, 12);
    expect((Math.PI / 4) * hydraulicDiameterOf(section) ** 2).toBeCloseTo(231e-6, 6);
  });
  it('8: friction factors are Darcy’s, four times Fanning’s', () => {
    expect(frictionFactor(circle, 1000, 0)).toBeCloseTo(0.064, 12);
  });
  it('9: friction runs without a jump from laminar to turbulent', () => {
    const edges = [2300, 4000].flatMap((re) => [frictionFactor(circle, re - 0.01, 0.001), frictionFactor(circle, re + 0.01, 0.001)]);
    expect(Math.abs((edges[0] ?? 0) - (edges[1] ?? 1))).toBeLessThan(1e-6);
    expect(Math.abs((edges[2] ?? 0) - (edges[3] ?? 1))).toBeLessThan(1e-6);
  });
  it('10: a thin slot narrows the jet and does not slow it', () => {
    const state = networkAt(sheetDuct(2.5, 15, { ending: 'thin', frictionless: true }), SHEET_AIR, 100);
    const [outlet] = state.outlets;
    expect(outlet?.jetSpeed).toBeCloseTo(Math.sqrt(200 / 1.2), 9);
    expect(outlet?.meanSpeed).toBeCloseTo(DISCHARGE_COEFFICIENT * Math.sqrt(200 / 1.2), 9);
    expect(thinSlotLoss()).toBeCloseTo(1 / 0.61 ** 2, 12);
  });
  it('11: two outlets stand side by side, not one behind the other', () => {
    const [one] = sheetDuct(2.5, 15).outlets;
    if (one === undefined) throw new Error('an outlet expected');
    const single = operatingPoint(line, { ...sheetDuct(2.5, 15), outlets: [one] }, SHEET_AIR).flow;
    expect(operatingPoint(line, sheetDuct(2.5, 15), SHEET_AIR).flow).toBeGreaterThan(1.3 * single);
  });
  it('12: the cube law is for shaft power; electrical power of small fans is not tied to it', () => {
    expect(shaftPowerAtSpeed(1, 2)).toBe(8);
    const halfPower = credibilityOf({ freeFlow: FOUR_CFM, current: 0.05, voltage: 24 }, 'blower', undefined, { freeFlow: FOUR_CFM, current: 0.1, voltage: 24 }).band;
    expect((halfPower?.high ?? 0) / (halfPower?.low ?? 1)).toBeGreaterThan(1.2);
  });
  it('13: more free flow without pressure does little in a tight duct', () => {
    const tight = sheetDuct(1, 15);
    const moreFlow = operatingPoint(curveFromEnds(150, 1.5 * FOUR_CFM, 1), tight, SHEET_AIR).flow;
    const morePressure = operatingPoint(curveFromEnds(225, FOUR_CFM, 1), tight, SHEET_AIR).flow;
    expect(morePressure).toBeGreaterThan(moreFlow);
  });
  it('14: inches and millimetres of water are told apart', () => {
    const inch = readQuantity('1 inH2O', 'pressure').value?.value ?? 0;
    expect(inch / (readQuantity('1 mmH20', 'pressure').value?.value ?? 1)).toBeCloseTo(25.4, 9);
  });
  it('15: per minute and per hour are told apart, and a listing with both is questioned', () => {
    const reading = readAdvertisement('blower 5.4 m3/min  5.4 m3/h');
    expect(reading.problems.map((problem) => problem.code)).toEqual(['stated-twice']);
    expect(reading.problems[0]?.next).toMatch(/per minute and one per hour/u);
  });
  it('16: a speed alone does not give the flow in another duct', () => {
    const open = operatingPoint(line, sheetDuct(6, 20), SHEET_AIR).flow;
    expect(operatingPoint(line, sheetDuct(2.5, 15), SHEET_AIR).flow / open).toBeLessThan(0.6);
  });
  it('17: an axial fan is solved on the side of most flow, and a near second crossing is told', () => {
    const curveOf = (points: readonly (readonly [number, number])[]): ReturnType<typeof curveFromPoints> => curveFromPoints(points.map(([q, p]) => ({ flow: q * FOUR_CFM, pressure: p })));
    const stalled = curveOf([[0, 60], [0.2, 40], [0.45, 44], [0.7, 25], [1, 0]]);
    const through = (area: number, curve = stalled): ReturnType<typeof operatingPoint> => operatingPoint(curve, { ...straightOn('static'), outlets: [{ name: 'a', ending: 'open', area, branchArea: area, dischargeCoefficient: 1, elements: [] }] }, SHEET_AIR);
    const areas = Array.from({ length: 60 }, (_, k) => (20 + 2 * k) * 1e-6);
    const flows = areas.map((area) => through(area).shareOfFreeFlow);
    expect(flows.every((flow, k) => k === 0 || flow >= (flows[k - 1] ?? 0))).toBe(true);
    expect(stalled.stallShare).toBeCloseTo(0.45, 9);
    // A duct's curve is steeper than a shallow rise everywhere; only a deep dip is crossed more than once.
    const deep = curveOf([[0, 60], [0.3, 5], [0.45, 50], [0.6, 30], [1, 0]]);
    const told = areas.map((area) => through(area, deep)).filter((point) => point.remarks.includes('stall-near'));
    expect(told.length).toBeGreaterThan(0);
    expect(told.filter((point) => point.shareOfFreeFlow < 0.4)).toEqual([]);
  });
  it('18: a curve through points does not overshoot them', () => {
    const curve = curveFromPoints([[0, 90], [0.1, 89], [0.5, 20], [0.6, 18], [1, 0]].map(([q = 0, p = 0]) => ({ flow: q * FOUR_CFM, pressure: p })));
    const shape = Array.from({ length: 1001 }, (_, k) => curve.shape(k / 1000));
    expect(Math.max(...shape)).toBeLessThanOrEqual(1);
    expect(Math.min(...shape)).toBeGreaterThanOrEqual(-1e-12);
    expect(shape.every((value, k) => k === 0 || value <= (shape[k - 1] ?? 1) + 1e-12)).toBe(true);
  });
  it('19: parallel fans do not double the flow of a tight duct; series does better there', () => {
    const tight = sheetDuct(1.5, 15);
    const one = operatingPoint(line, tight, SHEET_AIR).flow;
    const parallel = operatingPoint(twoFansInParallel(line), tight, SHEET_AIR).flow;
    expect(parallel / one).toBeLessThan(1.2);
    expect(operatingPoint(twoFansInSeries(line), tight, SHEET_AIR).flow).toBeGreaterThan(parallel);
  });
  it('20: a smaller outlet is faster, but there is a best area for what the jet can do', () => {
    const best = bestOutletArea('momentum', 'line', 150, FOUR_CFM, 1.2).area;
    const jetAt = (area: number): OperatingPoint => operatingPoint(line, { mode: 'static', fanOutletArea: area, trunkArea: area, trunk: [], outlets: [{ name: 'a', ending: 'open', area, branchArea: area, dischargeCoefficient: 1, elements: [] }], leaks: [] }, SHEET_AIR);
    const momentum = (area: number): number => jetAt(area).jetThrust;
    expect(jetAt(0.8 * best).outlets[0]?.jetSpeed).toBeGreaterThan(jetAt(best).outlets[0]?.jetSpeed ?? 0);
    expect(momentum(best)).toBeGreaterThan(momentum(0.8 * best));
    expect(momentum(best)).toBeGreaterThan(momentum(1.25 * best));
  });
  it('21: warm air in a chamber is thinner and asks for more cooling', () => {
    expect(densityOfAir(333.15, 101325, 0.1) / densityOfAir(293.15, 101325, 0.1)).toBeLessThan(0.89);
    const task = { polymer: 'PLA', layerTime: 10, layerHeight: 0.2e-3, nozzleTemperature: 483.15 };
    expect(neededCoefficient({ ...task, airTemperature: 318.15 }).layerHistory).toBeGreaterThan(1.3 * neededCoefficient({ ...task, airTemperature: 298.15 }).layerHistory);
  });
  it('22: one layer alone is not the safe side', () => {
    expect(biotNumber(75, 0.2e-3, 0.13)).toBeGreaterThan(0.1);
    const need = neededCoefficient({ polymer: 'PLA', layerTime: 10, layerHeight: 0.2e-3, nozzleTemperature: 483.15, airTemperature: 298.15 });
    expect(need.layerHistory / need.lumped).toBeGreaterThan(1.4);
  });
  it('23: degrees Celsius do not get into formulas of absolute temperature', () => {
    expect(() => airAt(23, 101325, 0.5)).toThrow(/K/u);
    expect(() => viscosityOfAir(-5)).toThrow(/above 0 K/u);
    expect(radiationCoefficient(0.95, 483.15, 298.15)).toBeCloseTo(13.6, 1);
  });
  it('24: a correlation outside its range says so', () => {
    const air = { kinematicViscosity: 1.6e-5, conductivity: 0.0263, prandtl: 0.71 };
    expect(slotJetConvection(2.5e-3, 9, 10e-3, 20e-3, air).outsideRange).toEqual(['Re 2.81e+3 is outside 3000 to 90000']);
    expect(slotJetConvection(6e-3, 6, 15e-3, 30e-3, air).outsideRange).toEqual([]);
  });
  it('25: directions are not averaged as numbers, and the lobe is tested by F', () => {
    const around = [350, 10, 80, 170, 190, 260].map((degrees) => ({ angle: (degrees * Math.PI) / 180, value: 0.4 + 0.2 * Math.cos((degrees * Math.PI) / 180), print: 1 }));
    const direction = fitOneLobe(around.map((reading, k) => ({ ...reading, value: reading.value + (k % 2 === 0 ? 0.003 : -0.003) }))).direction;
    expect(Math.min(direction, 2 * Math.PI - direction)).toBeLessThan(0.1);
    const noise = [0.4, 0.42, 0.39, 0.41, 0.4, 0.38, 0.42, 0.4].map((value, k) => ({ angle: (k * Math.PI) / 4, value, print: 1 }));
    expect(fitOneLobe(noise).chanceOfNothing).toBeGreaterThan(0.05);
    expect(fitOneLobe(noise).lobe).toBeGreaterThan(0);
  });
  it('26: the largest current on a label is not the typical one', () => {
    const trusted = { freeFlow: FOUR_CFM, current: 0.1, voltage: 24 };
    const typical = credibilityOf({ freeFlow: FOUR_CFM, current: 0.1, voltage: 24 }, 'blower', undefined, trusted).band?.middle ?? 0;
    const label = credibilityOf({ freeFlow: FOUR_CFM, current: 0.1, voltage: 24, currentIsLargest: true }, 'blower', undefined, trusted).band?.middle ?? 1;
    expect(label).toBeLessThan(0.85 * typical);
  });
  it('27: uncertainties add as squares, and a reading shows no more digits than it has', () => {
    // Vane on a nozzle (sheet 3.4): 4.2, 1.5, 4 and 3 % are 6.7 %; added as they stand they would be 12.7 %.
    const budget = combine([4.2, 1.5, 4, 3].map((percent) => ({ value: 1, standard: percent / 100 })), (factors) => factors.reduce((product, factor) => product * factor, 1));
    expect(100 * budget.standard).toBeCloseTo(6.7, 1);
    expect(formatMeasured({ kind: 'volume-flow', value: 3.8 * CUBIC_FOOT_PER_MINUTE, plusMinus: 2 * 0.067 * 3.8 * CUBIC_FOOT_PER_MINUTE }, 'CFM').replace(/[\u202f\u00a0]/gu, ' ')).toBe('3.8 ± 0.5 CFM');
  });
});

describe('fan laws and voltages', () => {
  it('scales flow with the speed and pressure with its square', () => {
    const faster = curveAtSpeed(line, 1.25);
    expect([faster.maxPressure, faster.freeFlow / FOUR_CFM]).toEqual([234.375, 1.25]);
  });
  it('doubts that a fan starts below three quarters of its voltage', () => {
    expect([speedRatioAtVoltage(0.5).starts, speedRatioAtVoltage(0.8).starts]).toEqual([false, true]);
  });
  it('refuses a table that rises without a stall mark', () => {
    const rows = [['0 CFM', '60 Pa'], ['1 CFM', '40 Pa'], ['2 CFM', '44 Pa'], ['4 CFM', '0 Pa']].map(([flow = '', pressure = '']) => ({ flow, pressure }));
    expect(readFanPoints(rows, { where: 'points', kind: 'axial', stallMarked: false }).problems.map((problem) => problem.code)).toEqual(['rising-curve']);
    expect(readFanPoints(rows, { where: 'points', kind: 'axial', stallMarked: true }).problems).toEqual([]);
  });
});
