import { topLayerFast } from './layer-history';
import { neededBiot } from './needed-biot';
import { biotCorrected, lumpedTime, timeConstant } from './lumped-layer';
import { polymerNamed } from './polymers';

/** What a print asks of the air: temperatures K, lengths m, time s. */
export interface PrintTask {
  readonly polymer: string;
  readonly layerTime: number;
  readonly layerHeight: number;
  readonly nozzleTemperature: number;
  /** Temperature of the air that reaches the part, warmed by bed and heater on its way. */
  readonly airTemperature: number;
}

/** A coefficient as a range between two models, W/(m²·K). */
export interface NeededCoefficient {
  /** One layer alone, the lower bound. */
  readonly lumped: number;
  /** All layers below remembered, nothing lost sideways: the upper bound. */
  readonly layerHistory: number;
}

/** A layer time as a range between the same two models, s. */
export interface MinimumLayerTime {
  readonly lumped: number;
  readonly layerHistory: number;
}

/** `full` solves the layer history (50 ms); `table` reads it from the stored table (microseconds, within 1 %). */
export type ModelDepth = 'full' | 'table';

/**
 * The coefficient that cools a layer in time. Endless when the air is not colder than the temperature that the polymer holds at.
 * Worked: PLA, 0.2 mm, 210 °C, 25 °C air: lumped 75 at 9.91 s; layer history 75 at 16.4 s.
 */
export function neededCoefficient(task: PrintTask, depth: ModelDepth = 'full'): NeededCoefficient {
  const polymer = polymerNamed(task.polymer);
  const theta = (polymer.holdsShapeAt - task.airTemperature) / (task.nozzleTemperature - task.airTemperature);
  if (theta <= 0) return { lumped: Number.POSITIVE_INFINITY, layerHistory: Number.POSITIVE_INFINITY };
  const heat = polymer.density * polymer.heatCapacity * task.layerHeight;
  return {
    lumped: (heat / task.layerTime) * Math.log(1 / theta),
    layerHistory: depth === 'full' ? halve((h) => topLayer(task, h) > theta, 0.1, 20_000) : tabulated(task, theta),
  };
}

/**
 * The shortest layer time that the air of today allows, s, between the two models. `coefficient` above 0.
 * Below the lower one overheating is very likely, above the upper one unlikely; between, the part's shape decides.
 * Worked: PLA as above at 75: 9.9 to 16.4 s; at 150: 5.0 to 7.6 s.
 */
export function minimumLayerTime(task: Omit<PrintTask, 'layerTime'>, coefficient: number, depth: ModelDepth = 'full'): MinimumLayerTime {
  if (!(coefficient > 0)) throw new Error(`minimumLayerTime: got coefficient ${coefficient}, expected above 0`);
  const polymer = polymerNamed(task.polymer);
  const theta = (polymer.holdsShapeAt - task.airTemperature) / (task.nozzleTemperature - task.airTemperature);
  const tau = timeConstant(polymer.density, polymer.heatCapacity, task.layerHeight, coefficient);
  if (theta <= 0) return { lumped: Number.POSITIVE_INFINITY, layerHistory: Number.POSITIVE_INFINITY };
  return {
    lumped: lumpedTime({ from: task.nozzleTemperature, to: polymer.holdsShapeAt, air: task.airTemperature }, tau),
    layerHistory: halve((time) => (depth === 'full' ? topLayer({ ...task, layerTime: time }, coefficient) > theta : tabulated({ ...task, layerTime: time }, theta) > coefficient), 0.05, 3600),
  };
}

/** Mean temperature of the top layer before the next one at a coefficient, K, in the layer-history model. */
export function topLayerTemperature(task: PrintTask, coefficient: number): number {
  return task.airTemperature + topLayer(task, coefficient) * (task.nozzleTemperature - task.airTemperature);
}

/** Time for one layer alone with the Biot correction, s. Worked: PLA 0.4 mm, 210 to 60 °C, 25 °C air, h 150: 11.435. */
export function correctedLayerTime(task: Omit<PrintTask, 'layerTime'>, coefficient: number): number {
  const polymer = polymerNamed(task.polymer);
  const corrected = biotCorrected(coefficient, task.layerHeight, polymer.conductivity);
  const tau = timeConstant(polymer.density, polymer.heatCapacity, task.layerHeight, corrected);
  return lumpedTime({ from: task.nozzleTemperature, to: polymer.holdsShapeAt, air: task.airTemperature }, tau);
}

/** Layers in the stack that stands for "steady". */
const STEADY_LAYERS = 40;

function topLayer(task: PrintTask, coefficient: number): number {
  const polymer = polymerNamed(task.polymer);
  const diffusivity = polymer.conductivity / (polymer.density * polymer.heatCapacity);
  return topLayerFast({
    biot: (coefficient * task.layerHeight) / polymer.conductivity,
    fourier: (diffusivity * task.layerTime) / task.layerHeight ** 2,
    layers: STEADY_LAYERS,
  });
}

function tabulated(task: PrintTask, theta: number): number {
  const polymer = polymerNamed(task.polymer);
  const diffusivity = polymer.conductivity / (polymer.density * polymer.heatCapacity);
  return (neededBiot(theta, (diffusivity * task.layerTime) / task.layerHeight ** 2) * polymer.conductivity) / task.layerHeight;
}

/** The place, on a logarithmic scale, where a condition stops holding as x grows. */
function halve(stillTooWarm: (x: number) => boolean, low: number, high: number): number {
  let left = Math.log(low);
  let right = Math.log(high);
  for (let round = 0; round < 16; round += 1) {
    const middle = (left + right) / 2;
    if (stillTooWarm(Math.exp(middle))) left = middle;
    else right = middle;
  }
  return Math.exp((left + right) / 2);
}
