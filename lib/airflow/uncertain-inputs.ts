import { exponential } from '@/lib/elementary';
import { stratifiedNormals } from './seeded-random';

/**
 * The uncertain inputs of a path as columns of standard normal deviates, one row per joint sample.
 * Which column means what is fixed here once; every quantity is a transform of its column.
 */
export interface UncertainInputs {
  readonly count: number;
  readonly layout: InputLayout;
  /** Column after column. */
  readonly deviates: Float64Array;
  /** Columns already turned into multipliers, by the place of the column in `deviates` (bytes) and by spread; many options share them. */
  readonly multipliers: Map<number, Map<number, Float64Array>>;
}

/** How many fans and ducts have inputs of their own. */
export interface InputLayout {
  readonly fans: number;
  readonly ducts: number;
  readonly columns: number;
}

/** Inputs that every option shares: loss coefficients, the jet, the heat, the print. */
export const SHARED_INPUTS = [
  'bend-loss', 'contraction-loss', 'friction', 'discharge', 'jet-core', 'warm-air', 'lee-share', 'need-model', 'polymer', 'convection', 'layer-time',
] as const;
export type SharedInput = (typeof SHARED_INPUTS)[number];

/** Inputs of one fan. */
export const FAN_INPUTS = ['fan-flow', 'fan-pressure', 'fan-shape', 'fan-speed', 'fan-inlet'] as const;
export type FanInput = (typeof FAN_INPUTS)[number];

/** Inputs of one duct, and of each of its at most four outlets. */
export const DUCT_INPUTS = ['duct-area', 'leak'] as const;
export type DuctInput = (typeof DUCT_INPUTS)[number];
export const OUTLET_INPUTS = ['outlet-area', 'outlet-branch', 'outlet-aim', 'outlet-distance'] as const;
export type OutletInput = (typeof OUTLET_INPUTS)[number];
const MOST_OUTLETS = 4;
const PER_DUCT = DUCT_INPUTS.length + MOST_OUTLETS * OUTLET_INPUTS.length;

/** Settings of the print, shared by every option. They stand behind all fans and ducts, whose draws they so leave as they are. */
export const PRINT_INPUTS = ['layer-height', 'nozzle-temperature'] as const;
export type PrintInput = (typeof PRINT_INPUTS)[number];

/** Lays out the columns for a number of fans and ducts, today's included. */
export function inputLayout(fans: number, ducts: number): InputLayout {
  return { fans, ducts, columns: SHARED_INPUTS.length + fans * FAN_INPUTS.length + ducts * PER_DUCT + PRINT_INPUTS.length };
}

/** Draws stratified joint samples. The same seed, count and layout give the same samples. */
export function drawInputs(layout: InputLayout, count: number, seed: number): UncertainInputs {
  const key = `${layout.columns} ${count} ${seed}`;
  if (key !== lastDrawn.key) lastDrawn = { key, deviates: stratifiedNormals(count, layout.columns, seed) };
  return withDeviates(layout, count, lastDrawn.deviates);
}

/** The last drawing, kept because a dimension that is dragged asks for the same one on every frame. Never written to. */
let lastDrawn: { readonly key: string; readonly deviates: Float64Array } = { key: '', deviates: new Float64Array(0) };

/** Samples with other deviates in the same layout. */
export function withDeviates(layout: InputLayout, count: number, deviates: Float64Array): UncertainInputs {
  return { count, layout, deviates, multipliers: new Map() };
}

/** Columns of everything that is shared, the print's with it, and of some fans and one duct. */
export function columnsOf({ layout }: UncertainInputs, fans: readonly number[], duct: number): number[] {
  const run = (start: number, length: number): number[] => Array.from({ length }, (_, k) => start + k);
  const ductStartsAt = SHARED_INPUTS.length + layout.fans * FAN_INPUTS.length + duct * PER_DUCT;
  return [...run(0, SHARED_INPUTS.length), ...fans.flatMap((fan) => run(SHARED_INPUTS.length + fan * FAN_INPUTS.length, FAN_INPUTS.length)), ...run(ductStartsAt, PER_DUCT), ...run(layout.columns - PRINT_INPUTS.length, PRINT_INPUTS.length)];
}

/** A column as multipliers around 1: exp(spread × deviate). Not to be written to: options share it. */
export function multiplierOf(inputs: UncertainInputs, deviates: Float64Array, spread: number): Float64Array {
  const ofColumn = inputs.multipliers.get(deviates.byteOffset) ?? new Map<number, Float64Array>();
  inputs.multipliers.set(deviates.byteOffset, ofColumn);
  const known = ofColumn.get(spread);
  if (known !== undefined) return known;
  const values = new Float64Array(inputs.count);
  for (let s = 0; s < inputs.count; s += 1) values[s] = exponential(spread * (deviates[s] ?? 0));
  ofColumn.set(spread, values);
  return values;
}

export function sharedColumn(inputs: UncertainInputs, name: SharedInput): Float64Array {
  return column(inputs, SHARED_INPUTS.indexOf(name));
}

export function printColumn(inputs: UncertainInputs, name: PrintInput): Float64Array {
  return column(inputs, inputs.layout.columns - PRINT_INPUTS.length + PRINT_INPUTS.indexOf(name));
}

export function fanColumn(inputs: UncertainInputs, fan: number, name: FanInput): Float64Array {
  if (fan >= inputs.layout.fans) throw new Error(`fanColumn: got fan ${fan}, expected below ${inputs.layout.fans}`);
  return column(inputs, SHARED_INPUTS.length + fan * FAN_INPUTS.length + FAN_INPUTS.indexOf(name));
}

export function ductColumn(inputs: UncertainInputs, duct: number, name: DuctInput): Float64Array {
  return column(inputs, ductStart(inputs, duct) + DUCT_INPUTS.indexOf(name));
}

export function outletColumn(inputs: UncertainInputs, duct: number, outlet: number, name: OutletInput): Float64Array {
  return column(inputs, ductStart(inputs, duct) + DUCT_INPUTS.length + outlet * OUTLET_INPUTS.length + OUTLET_INPUTS.indexOf(name));
}

/**
 * Logarithmic standard deviation of a quantity known as `value` ± `plusMinus` (95 %): the log-normal of equal relative spread.
 * Worked: 10 ± 2 gives 0.1015.
 */
export function logSpread(value: number, plusMinus: number): number {
  if (value <= 0) return 0;
  const relative = plusMinus / 1.96 / value;
  return Math.sqrt(Math.log1p(relative * relative));
}

function ductStart(inputs: UncertainInputs, duct: number): number {
  if (duct >= inputs.layout.ducts) throw new Error(`ductColumn: got duct ${duct}, expected below ${inputs.layout.ducts}`);
  return SHARED_INPUTS.length + inputs.layout.fans * FAN_INPUTS.length + duct * PER_DUCT;
}

function column(inputs: UncertainInputs, index: number): Float64Array {
  return inputs.deviates.subarray(index * inputs.count, (index + 1) * inputs.count);
}
