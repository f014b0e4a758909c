import { mapped } from '@/lib/elementary';
import { chosenByWeight, columnsOf, fanSlotsUsed, inputsOfChosen, pathOfChosen, samplePath, type Air, type SampledPath, type SideSeen, type UncertainInputs } from '@/lib/airflow';
import { coefficientsTowards, coolingOfSamples, neededOfSamples, type JetStore, type SampledCooling } from '@/lib/cooling';
import type { AirChange } from './air-options';

/** One change over all joint samples. */
export interface SampledOption {
  readonly change: AirChange;
  readonly path: SampledPath;
  readonly cooling: SampledCooling;
  /** Coefficient that the print needs, W/(m²·K). */
  readonly needed: Float64Array;
  /** Worst side over need. */
  readonly coverage: Float64Array;
}

/** Mean of layer and air temperature for the air's properties, K: about 60 °C. A change of 20 K moves the result by 1 %. */
const FILM_TEMPERATURE = 333;

/** Chance that a side is called right: held when it got enough, curled when it did not. Estimate; the shape of the part also counts. */
const CALLED_RIGHT = 0.9;

/**
 * The joint samples after looking at the part: samples in which the sides that curled got less than the need, and those that held got
 * enough, count nine times as much per side. This is what makes a failed print the best reading of what it needs.
 */
export function updateBySides(sides: readonly SideSeen[], leave: AirChange, air: Air, inputs: UncertainInputs, today: SampledPath): { readonly inputs: UncertainInputs; readonly path: SampledPath } {
  if (sides.length === 0) return { inputs, path: today };
  const needed = neededOfSamples(leave.task, inputs);
  const weights = new Float64Array(inputs.count).fill(1);
  const bySide = coefficientsTowards(sides.map(({ direction }) => direction), leave.variant, today, air, inputs, FILM_TEMPERATURE);
  for (const [k, side] of sides.entries()) {
    const got = bySide[k] ?? new Float64Array(inputs.count);
    for (let s = 0; s < weights.length; s += 1) {
      const agrees = ((got[s] ?? 0) >= (needed[s] ?? 0)) === side.held;
      weights[s] = (weights[s] ?? 0) * (agrees ? CALLED_RIGHT : 1 - CALLED_RIGHT);
    }
  }
  const chosen = chosenByWeight(weights);
  return { inputs: inputsOfChosen(inputs, chosen, columnsOf(inputs, fanSlotsUsed(leave.variant), leave.variant.ductSlot)), path: pathOfChosen(today, chosen) };
}

/** Solves all changes on the same joint samples; paths and needs that are the same are solved once. */
export function sampleOptions(changes: readonly AirChange[], air: Air, inputs: UncertainInputs, today: SampledPath): SampledOption[] {
  const first = changes[0];
  const solved = new Map<unknown, { path: SampledPath; cooling: SampledCooling }>();
  const jets: JetStore = new Map();
  const needs = new Map<string, Float64Array>();
  return mapped(changes, (change) => {
    const state = solved.get(change.variant) ?? solve(change, first?.variant === change.variant ? today : undefined, air, inputs, jets);
    solved.set(change.variant, state);
    const key = `${change.task.layerTime} ${change.task.nozzleTemperature}`;
    const needed = needs.get(key) ?? neededOfSamples(change.task, inputs);
    needs.set(key, needed);
    return { change, ...state, needed, coverage: coverageOf(state.cooling.worst, needed) };
  });
}

function coverageOf(worst: Float64Array, needed: Float64Array): Float64Array {
  const coverage = new Float64Array(worst.length);
  for (let s = 0; s < coverage.length; s += 1) coverage[s] = (worst[s] ?? 0) / (needed[s] ?? 1);
  return coverage;
}

function solve(change: AirChange, known: SampledPath | undefined, air: Air, inputs: UncertainInputs, jets: JetStore): { path: SampledPath; cooling: SampledCooling } {
  const path = known ?? samplePath(change.variant, air, inputs);
  return { path, cooling: coolingOfSamples(change.variant, path, air, inputs, FILM_TEMPERATURE, jets) };
}
