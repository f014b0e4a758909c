import { mapped } from '@/lib/elementary';
import { chosenByWeight, columnOfChosen, columnsOf, fanSlotsUsed, inputsOfChosen, pathOfChosen, samplePath, type Air, type SampledPath, type SideSeen, type UncertainInputs } from '@/lib/airflow';
import { coefficientsTowards, coolingOfSamples, jetsOfChosen, neededOfSamples, type JetGeometry, type JetStore, type SampledCooling, type SampledTask } from '@/lib/cooling';
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
export const FILM_TEMPERATURE = 333;

/** Chance that a side is called right: held when it got enough, curled when it did not. Estimate; the shape of the part also counts. */
const CALLED_RIGHT = 0.9;

/** What was worked out of joint samples already: jets, and the needs of prints by their key. */
export interface WorkedOut {
  readonly jets: JetStore;
  readonly needs: Map<string, Float64Array>;
}

/**
 * The joint samples after looking at the part: samples in which the sides that curled got less than the need, and those that held got
 * enough, count nine times as much per side. This is what makes a failed print the best reading of what it needs.
 */
export function updateBySides(sides: readonly SideSeen[], leave: AirChange, air: Air, inputs: UncertainInputs, today: SampledPath): { readonly inputs: UncertainInputs; readonly path: SampledPath; readonly known: WorkedOut } {
  const jets: JetStore = new Map<string, JetGeometry>();
  if (sides.length === 0) return { inputs, path: today, known: { jets, needs: new Map() } };
  const needed = neededOfSamples(leave.task, inputs);
  const weights = new Float64Array(inputs.count).fill(1);
  const bySide = coefficientsTowards(sides.map(({ direction }) => direction), leave.variant, today, air, inputs, FILM_TEMPERATURE, jets);
  for (const [k, side] of sides.entries()) {
    const got = bySide[k] ?? new Float64Array(inputs.count);
    for (let s = 0; s < weights.length; s += 1) {
      const agrees = ((got[s] ?? 0) >= (needed[s] ?? 0)) === side.held;
      weights[s] = (weights[s] ?? 0) * (agrees ? CALLED_RIGHT : 1 - CALLED_RIGHT);
    }
  }
  const chosen = chosenByWeight(weights);
  return {
    inputs: inputsOfChosen(inputs, chosen, columnsOf(inputs, fanSlotsUsed(leave.variant), leave.variant.ductSlot)),
    path: pathOfChosen(today, chosen),
    known: { jets: jetsOfChosen(jets, chosen), needs: new Map([[keyOf(leave.task), columnOfChosen(needed, chosen)]]) },
  };
}

/** Prints of one path differ in these only. */
function keyOf({ layerTime, nozzleTemperature }: SampledTask): string {
  return `${layerTime} ${nozzleTemperature}`;
}

/** Solves all changes on the same joint samples; paths and needs that are the same are solved once. */
export function sampleOptions(changes: readonly AirChange[], air: Air, inputs: UncertainInputs, today: SampledPath, { jets, needs }: WorkedOut = { jets: new Map<string, JetGeometry>(), needs: new Map<string, Float64Array>() }): SampledOption[] {
  const first = changes[0];
  const solved = new Map<unknown, { path: SampledPath; cooling: SampledCooling }>();
  return mapped(changes, (change) => {
    const state = solved.get(change.variant) ?? solve(change, first?.variant === change.variant ? today : undefined, air, inputs, jets);
    solved.set(change.variant, state);
    const key = keyOf(change.task);
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
