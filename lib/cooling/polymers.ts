/** Thermal figures and print settings of a polymer family. Temperatures in K, the rest SI. */
export interface Polymer {
  readonly name: string;
  readonly density: number;
  /** J/(kg·K), between softening and nozzle; figures differ by 30 % between sources. */
  readonly heatCapacity: number;
  /** W/(m·K). */
  readonly conductivity: number;
  /** Mean temperature that a layer must fall to before the next one so that it holds its shape. */
  readonly holdsShapeAt: number;
  /** Nozzle temperatures in use: lowest, median, highest over public material profiles. */
  readonly nozzle: readonly [number, number, number];
  /** Layer time below which profiles slow down, median, s. */
  readonly slowDownBelow: number;
  /** Share of full fan that profiles ask for, 0 to 1: medians of their lowest and highest setting. */
  readonly fanShare: readonly [number, number];
  readonly basis: string;
}

const celsius = (value: number): number => value + 273.15;
const nozzle = (low: number, median: number, high: number): readonly [number, number, number] => [celsius(low), celsius(median), celsius(high)];

/**
 * The families, most printed first. Density, heat capacity and conductivity as named in each basis; where a range is published
 * the value on the melt side is taken. `holdsShapeAt` is the glass transition, or the crystallisation range for PA, PP and TPU.
 */
export const POLYMERS: readonly Polymer[] = [
  { name: 'PLA', density: 1240, heatCapacity: 1800, conductivity: 0.13, holdsShapeAt: celsius(60), nozzle: nozzle(185, 210, 230), slowDownBelow: 10, fanShare: [1, 1], basis: 'conference abstract 2020 (k 0.12), public simulation settings (k 0.13, cp 1800), profile statistics' },
  { name: 'PETG', density: 1270, heatCapacity: 1200, conductivity: 0.17, holdsShapeAt: celsius(80), nozzle: nozzle(220, 240, 270), slowDownBelow: 10, fanShare: [0.3, 0.5], basis: 'student report, weak; profile statistics' },
  { name: 'ABS', density: 1040, heatCapacity: 1300, conductivity: 0.25, holdsShapeAt: celsius(105), nozzle: nozzle(230, 255, 270), slowDownBelow: 20, fanShare: [0.15, 0.15], basis: '"Plastics Engineering" table 1.8; profile statistics' },
  { name: 'ASA', density: 1070, heatCapacity: 1300, conductivity: 0.18, holdsShapeAt: celsius(100), nozzle: nozzle(220, 260, 275), slowDownBelow: 15, fanShare: [0.2, 0.2], basis: 'heat figures from memory; profile statistics' },
  { name: 'TPU', density: 1200, heatCapacity: 1700, conductivity: 0.2, holdsShapeAt: celsius(90), nozzle: nozzle(200, 235, 260), slowDownBelow: 10, fanShare: [0.5, 0.7], basis: 'heat figures from memory; hold temperature estimate; profile statistics' },
  { name: 'PA', density: 1130, heatCapacity: 1700, conductivity: 0.25, holdsShapeAt: celsius(170), nozzle: nozzle(240, 270, 285), slowDownBelow: 15, fanShare: [0.1, 0.15], basis: '"Plastics Engineering" table 1.8; hold temperature estimate (crystallisation); profile statistics' },
  { name: 'PC', density: 1200, heatCapacity: 1200, conductivity: 0.2, holdsShapeAt: celsius(147), nozzle: nozzle(270, 275, 285), slowDownBelow: 20, fanShare: [0.2, 0.2], basis: '"Plastics Engineering" table 1.8; profile statistics' },
  { name: 'PP', density: 903, heatCapacity: 2000, conductivity: 0.2, holdsShapeAt: celsius(115), nozzle: nozzle(220, 238, 250), slowDownBelow: 15, fanShare: [0.55, 0.72], basis: '"Plastics Engineering" table 1.8; crystallisation from memory; profile statistics' },
];

/** The family of that name; throws for an unknown one, because the file reader has checked it. Worked: PLA has 1240 kg/m³. */
export function polymerNamed(name: string): Polymer {
  const found = POLYMERS.find((polymer) => polymer.name === name);
  if (found === undefined) throw new Error(`polymerNamed: got ${name}, expected one of ${POLYMERS.map((polymer) => polymer.name).join(', ')}`);
  return found;
}
