import {
  CORE_CONSTANT, PRANDTL_NUMBER_OF_AIR, aimOffset, columnOfChosen, conductivityOfAir, jetHalfWidth, logSpread, missesOfFault, multiplierOf, outletColumn, printColumn, shareAtOffset, sharedColumn, viscosityOfAir,
  type Air, type OutletFacts, type PathVariant, type SampledPath, type UncertainInputs,
} from '@/lib/airflow';
import { exponential, mapped, naturalLog } from '@/lib/elementary';
import { polymerNamed } from './polymers';
import { logOfNeededBiot } from './needed-biot';

/** Sides of the part that are looked at: eight, 45° apart, from +X (right) towards +Y (back). */
export const SIDES = 8;

/** Cooling of every joint sample: one value per sample. */
export interface SampledCooling {
  /** Coefficient of the worst and the best side, W/(m²·K). */
  readonly worst: Float64Array;
  readonly best: Float64Array;
  /** Mean over the samples of each side, W/(m²·K), for the picture. */
  readonly bySide: readonly number[];
  /** Side with the least, on the mean over the samples, rad. */
  readonly worstDirection: number;
  /** Speed of the air at the part from the outlet that gives most, m/s: what the nozzle and heater block feel. */
  readonly speedAtNozzle: Float64Array;
}

/** Spread of a convection correlation used near the edge of its range (log). Estimate: textbooks give 15 to 25 %. */
const CONVECTION_SPREAD = 0.2;
/** Heat that leaves without any fan: radiation and natural convection together give 15 to 30 W/(m²·K) (sheet, section 9). */
const STILL_AIR_COEFFICIENT = 18;
/**
 * Share of the facing side's coefficient that the far side still gets: 0.1 to 0.4, by a normal share of the sample.
 * Estimate; the eight-direction print measures it.
 */
const LEE_SHARE = { low: 0.1, high: 0.4 } as const;

/**
 * Coefficients round the part for every joint sample.
 *
 * Each outlet strikes with Martin's slot law (or his round law for a circle) on its exit speed, lowered for a jet that decays
 * faster at low Reynolds number than the law's own jets, and for missing the spot. A side turned away by an angle a gets
 * lee + (1 - lee)·(1 + cos a)/2 of it: one lobe, as `fitOneLobe` fits to a print. Lobes of several jets add, so equal opposite jets
 * cool evenly; still air adds its own.
 * The joint of these parts is an estimate; its spread is carried by the samples.
 */
export function coolingOfSamples(variant: PathVariant, path: SampledPath, air: Air, inputs: UncertainInputs, filmTemperature: number, store: JetStore = new Map<string, JetGeometry>()): SampledCooling {
  const { count } = inputs;
  const jets = jetsOf(variant, path, air, inputs, filmTemperature, store);
  const lee = leeShares(inputs);
  const along = Float64Array.from(variant.outlets, (outlet) => Math.cos(outlet.direction.value));
  const across = Float64Array.from(variant.outlets, (outlet) => Math.sin(outlet.direction.value));
  const worst = new Float64Array(count);
  const best = new Float64Array(count);
  const speedAtNozzle = new Float64Array(count);
  let sumOfMiddles = 0;
  let sumAlong = 0;
  let sumAcross = 0;
  for (let s = 0; s < count; s += 1) {
    const leeShare = lee[s] ?? 0;
    let sum = 0;
    let a = 0;
    let b = 0;
    let fastest = 0;
    for (let k = 0; k < jets.length; k += 1) {
      const jet = jets[k];
      if (jet === undefined) continue;
      const h = jet.coefficient[s] ?? 0;
      sum += h;
      a += h * (along[k] ?? 0);
      b += h * (across[k] ?? 0);
      fastest = Math.max(fastest, jet.arriving[s] ?? 0);
    }
    // One lobe each, so their sum is one lobe: a mean with a cosine and a sine.
    const half = (1 - leeShare) / 2;
    const middle = STILL_AIR_COEFFICIENT + sum * (leeShare + half);
    const swing = half * Math.max(Math.abs(a), Math.abs(b), Math.SQRT1_2 * (Math.abs(a) + Math.abs(b)));
    worst[s] = middle - swing;
    best[s] = middle + swing;
    speedAtNozzle[s] = fastest;
    sumOfMiddles += middle;
    sumAlong += half * a;
    sumAcross += half * b;
  }
  const bySide = Array.from({ length: SIDES }, (_, side) => {
    const direction = (side * 2 * Math.PI) / SIDES;
    return (sumOfMiddles + sumAlong * Math.cos(direction) + sumAcross * Math.sin(direction)) / count;
  });
  const worstSide = bySide.indexOf(Math.min(...bySide));
  return { worst, best, bySide, worstDirection: (worstSide * 2 * Math.PI) / SIDES, speedAtNozzle };
}

/** Coefficients on the sides of the part that face these directions (rad), each once per joint sample, W/(m²·K). The same model as `coolingOfSamples`. */
export function coefficientsTowards(directions: readonly number[], variant: PathVariant, path: SampledPath, air: Air, inputs: UncertainInputs, filmTemperature: number, store: JetStore = new Map<string, JetGeometry>()): Float64Array[] {
  const jets = jetsOf(variant, path, air, inputs, filmTemperature, store);
  const lee = leeShares(inputs);
  return directions.map((direction) => {
    const towards = new Float64Array(inputs.count).fill(STILL_AIR_COEFFICIENT);
    variant.outlets.forEach((outlet, k) => {
      const jet = jets[k];
      if (jet !== undefined) addLobe(towards, jet.coefficient, lee, (1 + Math.cos(direction - outlet.direction.value)) / 2);
    });
    return towards;
  });
}

/** Adds what a jet gives to a side that is turned towards it by a share of 0 (away) to 1. */
function addLobe(towards: Float64Array, coefficient: Float64Array, lee: Float64Array, turned: number): void {
  const count = towards.length;
  for (let s = 0; s < count; s += 1) {
    const leeShare = lee[s] ?? 0;
    towards[s] = (towards[s] ?? 0) + (coefficient[s] ?? 0) * (leeShare + (1 - leeShare) * turned);
  }
}

/** The print's own uncertain figures, for `neededOfSamples`. Temperatures K. */
export interface SampledTask {
  readonly polymer: string;
  readonly layerTime: number;
  readonly layerTimePlusMinus: number;
  readonly layerHeight: number;
  readonly layerHeightPlusMinus: number;
  readonly nozzleTemperature: number;
  readonly nozzlePlusMinus: number;
  readonly chamberTemperature: number;
  readonly chamberPlusMinus: number;
}

/** Warming of the jet by bed and heater on its way, K: median and log spread. Sheet, section 8: air at 30 to 60 °C instead of 25. Estimate. */
const WARMING = { median: 6, spread: 0.5 } as const;
/** Scaled temperature to cool to, at most: a melt that is laid down hardly warmer than it holds its shape at needs next to no air. */
const WARMEST = 0.998;
/** Heat capacity and conductivity differ by 30 % between sources (95 %). */
const POLYMER_SPREAD = 0.15;

/**
 * The coefficient that the print needs, per sample: between one layer alone and the full layer history, both for the sample's
 * polymer figures, layer time and height, and temperatures of melt and air. Endless where the air is too warm to hold the shape.
 */
export function neededOfSamples(task: SampledTask, inputs: UncertainInputs): Float64Array {
  const polymer = polymerNamed(task.polymer);
  const warm = sharedColumn(inputs, 'warm-air');
  const warming = multiplierOf(inputs, warm, WARMING.spread);
  const mix = sharedColumn(inputs, 'need-model');
  const figures = sharedColumn(inputs, 'polymer');
  const time = sharedColumn(inputs, 'layer-time');
  const height = printColumn(inputs, 'layer-height');
  const melt = printColumn(inputs, 'nozzle-temperature');
  const timeSpread = logSpread(task.layerTime, task.layerTimePlusMinus);
  const heightSpread = logSpread(task.layerHeight, task.layerHeightPlusMinus);
  const meltSpread = task.nozzlePlusMinus / 1.96;
  const chamberSpread = task.chamberPlusMinus / 1.96;
  const heatCapacity = polymer.density * polymer.heatCapacity;
  // Logarithms at the middle of polymer figures, layer time and height: all move the rest by straight lines.
  const logRate = Math.log((heatCapacity * task.layerHeight) / task.layerTime);
  const logFourier = Math.log((polymer.conductivity * task.layerTime) / (heatCapacity * task.layerHeight ** 2));
  const logPerBiot = Math.log(polymer.conductivity / task.layerHeight);
  const { chamberTemperature, nozzleTemperature } = task;
  const { holdsShapeAt } = polymer;
  const needed = new Float64Array(inputs.count);
  for (let s = 0; s < needed.length; s += 1) {
    const airTemperature = chamberTemperature + chamberSpread * (warm[s] ?? 0) + WARMING.median * (warming[s] ?? 1);
    const theta = Math.min(WARMEST, (holdsShapeAt - airTemperature) / Math.max(1, nozzleTemperature + meltSpread * (melt[s] ?? 0) - airTemperature));
    if (theta <= 0.002) { needed[s] = Number.POSITIVE_INFINITY; continue; }
    const moved = timeSpread * (time[s] ?? 0) - POLYMER_SPREAD * (figures[s] ?? 0);
    const higher = heightSpread * (height[s] ?? 0);
    const logTheta = naturalLog(theta);
    const lumped = logRate + higher - moved + naturalLog(-logTheta);
    const history = logOfNeededBiot(logTheta - naturalLog(1 - theta), logFourier + moved - 2 * higher) + logPerBiot - higher;
    const share = 1 / (1 + exponential(-1.7 * (mix[s] ?? 0)));
    needed[s] = exponential(lumped + share * (history - lumped));
  }
  return needed;
}

/** What of a jet depends on its outlet alone and not on the fan, per sample: kept while many fans are tried on one duct. */
export interface JetGeometry {
  /** Share of the exit speed that still arrives at the spot. */
  readonly arrives: Float64Array;
  /** Speed that counts in Martin's law, over the exit speed. */
  readonly counts: Float64Array;
  /** Exponent of the Reynolds number, and everything else of the law. */
  readonly exponent: Float64Array;
  readonly factor: Float64Array;
  readonly round: boolean;
  readonly length: number;
}

/** Jet geometries already worked out, by everything that they depend on. One store serves one set of joint samples. */
export type JetStore = Map<string, JetGeometry>;

/** The jets of the chosen samples; right for ducts whose inputs were all drawn again with them. */
export function jetsOfChosen(store: JetStore, chosen: Int32Array): JetStore {
  const picked = (values: Float64Array): Float64Array => columnOfChosen(values, chosen);
  return new Map([...store].map(([key, { arrives, counts, exponent, factor, round, length }]) =>
    [key, { arrives: picked(arrives), counts: picked(counts), exponent: picked(exponent), factor: picked(factor), round, length }]));
}

function jetsOf(variant: PathVariant, path: SampledPath, air: Air, inputs: UncertainInputs, filmTemperature: number, store: JetStore): JetColumns[] {
  return mapped(variant.outlets, (outlet, k) => {
    const { mouth, distance, miss, aimError } = outlet;
    const key = [variant.ductSlot, k, mouth.shape, mouth.width.value, mouth.height.value, distance.value, distance.plusMinus, miss.value, aimError.value, variant.faults?.misaimed].join(' ');
    const geometry = store.get(key) ?? jetGeometry(outlet, k, variant, inputs, filmTemperature);
    store.set(key, geometry);
    return jetColumns(geometry, path.outlets[k]?.speed ?? new Float64Array(inputs.count), air, filmTemperature);
  });
}

/** Lee shares of joint samples met before: every option asks for the same ones. */
const LEE = new WeakMap<UncertainInputs, Float64Array>();

function leeShares(inputs: UncertainInputs): Float64Array {
  const known = LEE.get(inputs);
  if (known !== undefined) return known;
  const deviates = sharedColumn(inputs, 'lee-share');
  const shares = new Float64Array(inputs.count);
  for (let s = 0; s < shares.length; s += 1) shares[s] = LEE_SHARE.low + (LEE_SHARE.high - LEE_SHARE.low) / (1 + exponential(-1.7 * (deviates[s] ?? 0)));
  LEE.set(inputs, shares);
  return shares;
}

interface JetColumns {
  readonly coefficient: Float64Array;
  readonly arriving: Float64Array;
}

function jetColumns(geometry: JetGeometry, speeds: Float64Array, air: Air, filmTemperature: number): JetColumns {
  const viscosity = (viscosityOfAir(filmTemperature) / air.density) * (filmTemperature / 298.15);
  const { round, length, arrives, counts, exponent, factor } = geometry;
  const lengthOverViscosity = (round ? length : 2 * length) / viscosity;
  const coefficient = new Float64Array(speeds.length);
  const arriving = new Float64Array(speeds.length);
  for (let s = 0; s < speeds.length; s += 1) {
    const speed = speeds[s] ?? 0;
    const reynolds = Math.max(1, speed * (counts[s] ?? 0) * lengthOverViscosity);
    const power = round ? Math.sqrt(reynolds * (1 + 0.005 * exponential(0.55 * naturalLog(reynolds)))) : exponential((exponent[s] ?? 0) * naturalLog(reynolds));
    coefficient[s] = (factor[s] ?? 0) * power;
    arriving[s] = speed * (arrives[s] ?? 0);
  }
  return { coefficient, arriving };
}

function jetGeometry(outlet: OutletFacts, k: number, { ductSlot: slot, faults, outlets: { length: jets } }: PathVariant, inputs: UncertainInputs, filmTemperature: number): JetGeometry {
  const { count } = inputs;
  const { mouth } = outlet;
  const round = mouth.shape === 'circle';
  const short = Math.min(mouth.width.value, mouth.height.value);
  const long = Math.max(mouth.width.value, mouth.height.value);
  const equalDiameter = Math.sqrt((4 * long * short) / Math.PI);
  const conductivity = conductivityOfAir(filmTemperature);
  const aim = outletColumn(inputs, slot, k, 'outlet-aim');
  const away = outletColumn(inputs, slot, k, 'outlet-distance');
  const core = multiplierOf(inputs, sharedColumn(inputs, 'jet-core'), CORE_SPREAD);
  const rootOfCore = multiplierOf(inputs, sharedColumn(inputs, 'jet-core'), CORE_SPREAD / 2);
  const convection = multiplierOf(inputs, sharedColumn(inputs, 'convection'), CONVECTION_SPREAD);
  const distanceSpread = logSpread(outlet.distance.value, outlet.distance.plusMinus);
  const farther = multiplierOf(inputs, away, distanceSpread);
  const fartherInLaw = multiplierOf(inputs, away, SLOT_DISTANCE_POWER * distanceSpread);
  const arrives = new Float64Array(count);
  const counts = new Float64Array(count);
  const exponent = new Float64Array(count);
  const factor = new Float64Array(count);
  const reach = wettedReach(short);
  const passesBy = faults === undefined || faults.misaimed === 0 ? undefined : missesOfFault(aim, faults.misaimed, jets);
  const slotStart = reach / (2 * short) + 3.06;
  const slotDistance = (outlet.distance.value / (2 * short)) ** SLOT_DISTANCE_POWER;
  const aimSpread = AIM_SHARE * outlet.aimError.value;
  const distanceAsEntered = outlet.distance.value;
  const missAsEntered = outlet.miss.value;
  for (let s = 0; s < count; s += 1) {
    const distance = distanceAsEntered * (farther[s] ?? 1);
    // Of a plane jet at first and of a round one further out; see `rectangularJetSpeedRatio`.
    const plane = Math.sqrt(short / distance);
    const far = equalDiameter / distance;
    const reached = Math.min(1, ROOT_OF_MIDDLE * (rootOfCore[s] ?? 1) * plane, CORE_CONSTANT.middle * (core[s] ?? 1) * far);
    const reachedInLaw = Math.min(1, ROOT_OF_HIGH * plane, CORE_CONSTANT.high * far);
    const offset = missAsEntered + (passesBy === undefined ? 0 : (passesBy[s] ?? 0)) + aimOffset(distance, Math.min(1.2, aimSpread * Math.abs(aim[s] ?? 0)));
    const hit = shareAtOffset(offset, jetHalfWidth(distance, short));
    arrives[s] = reached * hit;
    counts[s] = (reached / reachedInLaw) * Math.max(0.05, hit);
    exponent[s] = round ? 0.5 : 0.695 - 1 / (slotStart + slotDistance * (fartherInLaw[s] ?? 1));
    factor[s] = (round ? roundFactor(short, distance, reach) : slotFactor(short, distance, reach)) * conductivity * (convection[s] ?? 1);
  }
  return { arrives, counts, exponent, factor, round, length: short };
}

/** Half-extent of the part that a jet wets, m, by the short side of its mouth, m: at least four widths, where the law begins to hold, and 12 mm for a usual part. Estimate. */
export function wettedReach(short: number): number {
  return Math.max(4 * short, 12e-3);
}

/** The entered aim error is a 95 % figure for a jet set by eye; half of it is a standard deviation. */
const AIM_SHARE = 0.5;
/** Core constant 4, and nine of ten between 2.2 and 7 (log). Covers the published 2 to 6. */
const CORE_SPREAD = 0.35;

const ROOT_OF_MIDDLE = Math.sqrt(CORE_CONSTANT.middle);
const ROOT_OF_HIGH = Math.sqrt(CORE_CONSTANT.high);

const PRANDTL_POWER = PRANDTL_NUMBER_OF_AIR ** 0.42;

/** Power of the distance in the exponent of Martin's slot law; see `slotJetConvection` for source and ranges. */
const SLOT_DISTANCE_POWER = 1.33;

/** The slot law without its power of the Reynolds number, over twice the width. */
function slotFactor(width: number, distance: number, reach: number): number {
  return (PRANDTL_POWER * 3.06) / (reach / width + distance / width + 2.78) / (2 * width);
}

/** The round law without its two powers of the Reynolds number, over the diameter. */
function roundFactor(diameter: number, distance: number, reach: number): number {
  const over = diameter / Math.max(reach, 2.5 * diameter);
  const shape = (over * (1 - 1.1 * over)) / (1 + 0.1 * (distance / diameter - 6) * over);
  return (PRANDTL_POWER * shape * 2) / diameter;
}
