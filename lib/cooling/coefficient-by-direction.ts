import {
  conductivityOfAir, logSpread, outletColumn, PRANDTL_NUMBER_OF_AIR, shareAtOffset, jetHalfWidth, sharedColumn, viscosityOfAir,
  type Air, type PathVariant, type SampledPath, type UncertainInputs,
} from '@/lib/airflow';
import { polymerNamed } from './polymers';
import { neededBiot } from './needed-biot';

/** Sides of the part that are looked at: eight, 45° apart, from +X (right) towards +Y (back). */
export const SIDES = 8;

/** Cooling of every joint sample: one value per sample. */
export interface SampledCooling {
  /** Coefficient of the worst and the best side, and of the mean over all sides, W/(m²·K). */
  readonly worst: Float64Array;
  readonly best: Float64Array;
  readonly mean: Float64Array;
  /** Mean over the samples of each side, W/(m²·K), for the picture. */
  readonly bySide: readonly number[];
  /** Which side is the worst in most samples, rad. */
  readonly worstDirection: number;
  /** Speed of the air at the part from the outlet that gives most, m/s: what the nozzle and heater block feel. */
  readonly speedAtNozzle: Float64Array;
}

/** Spread of a convection correlation used near the edge of its range (log). Estimate: textbooks give 15 to 25 %. */
const CONVECTION_SPREAD = 0.2;
/** Heat that leaves without any fan: radiation and natural convection together give 15 to 30 W/(m²·K) (sheet, section 9). */
const STILL_AIR_COEFFICIENT = 18;
/**
 * Share of the facing side's coefficient that the far side still gets: 0.25 to 0.60, by a normal share of the sample.
 * Estimate; the eight-direction print measures it.
 */
const LEE_SHARE = { low: 0.25, high: 0.6 } as const;

/**
 * Coefficients round the part for every joint sample.
 *
 * Each outlet strikes with Martin's slot law (or his round law for a circle) on its exit speed, lowered for a jet that decays
 * faster at low Reynolds number than the law's own jets, and for missing the spot. A side turned away by an angle a gets
 * lee + (1 - lee)·(1 + cos a)/2 of it. Jets on one side add as squares; still air adds its own.
 * The joint of these parts is an estimate; its spread is carried by the samples.
 */
export function coolingOfSamples(variant: PathVariant, path: SampledPath, air: Air, inputs: UncertainInputs, filmTemperature: number): SampledCooling {
  const { count } = inputs;
  const jets = variant.outlets.map((outlet, k) => jetColumns(variant, outlet, k, path, air, inputs, filmTemperature));
  const lee = sharedColumn(inputs, 'lee-share').map((z) => LEE_SHARE.low + (LEE_SHARE.high - LEE_SHARE.low) / (1 + Math.exp(-1.7 * z)));
  const turned = variant.outlets.map((outlet) => Float64Array.from({ length: SIDES }, (_, side) => (1 + Math.cos((side * 2 * Math.PI) / SIDES - outlet.direction.value)) / 2));
  const worst = new Float64Array(count);
  const best = new Float64Array(count);
  const mean = new Float64Array(count);
  const speedAtNozzle = new Float64Array(count);
  const bySide = new Float64Array(SIDES);
  const worstCount = new Float64Array(SIDES);
  for (let s = 0; s < count; s += 1) {
    const leeShare = lee[s] ?? 0;
    let low = Number.POSITIVE_INFINITY;
    let high = 0;
    let sum = 0;
    let lowSide = 0;
    for (let side = 0; side < SIDES; side += 1) {
      let squares = 0;
      for (let k = 0; k < jets.length; k += 1) {
        const share = leeShare + (1 - leeShare) * (turned[k]?.[side] ?? 0);
        const part = (jets[k]?.coefficient[s] ?? 0) * share;
        squares += part * part;
      }
      const h = STILL_AIR_COEFFICIENT + Math.sqrt(squares);
      bySide[side] = (bySide[side] ?? 0) + h / count;
      sum += h;
      if (h < low) { low = h; lowSide = side; }
      if (h > high) high = h;
    }
    worst[s] = low;
    best[s] = high;
    mean[s] = sum / SIDES;
    worstCount[lowSide] = (worstCount[lowSide] ?? 0) + 1;
    let fastest = 0;
    for (const jet of jets) fastest = Math.max(fastest, jet.arriving[s] ?? 0);
    speedAtNozzle[s] = fastest;
  }
  const worstSide = worstCount.indexOf(Math.max(...worstCount));
  return { worst, best, mean, bySide: Array.from(bySide), worstDirection: (worstSide * 2 * Math.PI) / SIDES, speedAtNozzle };
}

/** The print's own uncertain figures, for `neededOfSamples`. Temperatures K. */
export interface SampledTask {
  readonly polymer: string;
  readonly layerTime: number;
  readonly layerTimePlusMinus: number;
  readonly layerHeight: number;
  readonly nozzleTemperature: number;
  readonly chamberTemperature: number;
  readonly chamberPlusMinus: number;
}

/** Warming of the jet by bed and heater on its way, K: median and log spread. Sheet, section 8: air at 30 to 60 °C instead of 25. Estimate. */
const WARMING = { median: 6, spread: 0.5 } as const;
/** Heat capacity and conductivity differ by 30 % between sources (95 %). */
const POLYMER_SPREAD = 0.15;

/**
 * The coefficient that the print needs, per sample: between one layer alone and the full layer history, both for the sample's
 * polymer figures, layer time and air temperature. Endless where the air is too warm to hold the shape.
 */
export function neededOfSamples(task: SampledTask, inputs: UncertainInputs): Float64Array {
  const polymer = polymerNamed(task.polymer);
  const warm = sharedColumn(inputs, 'warm-air');
  const mix = sharedColumn(inputs, 'need-model');
  const figures = sharedColumn(inputs, 'polymer');
  const time = sharedColumn(inputs, 'layer-time');
  const timeSpread = logSpread(task.layerTime, task.layerTimePlusMinus);
  const chamberSpread = task.chamberPlusMinus / 1.96;
  const needed = new Float64Array(inputs.count);
  for (let s = 0; s < inputs.count; s += 1) {
    const z = warm[s] ?? 0;
    const airTemperature = task.chamberTemperature + chamberSpread * z + WARMING.median * Math.exp(WARMING.spread * z);
    const theta = (polymer.holdsShapeAt - airTemperature) / (task.nozzleTemperature - airTemperature);
    if (theta <= 0.002) { needed[s] = Number.POSITIVE_INFINITY; continue; }
    const scale = Math.exp(POLYMER_SPREAD * (figures[s] ?? 0));
    const layerTime = task.layerTime * Math.exp(timeSpread * (time[s] ?? 0));
    const heat = polymer.density * polymer.heatCapacity * scale * task.layerHeight;
    const lumped = (heat / layerTime) * Math.log(1 / theta);
    const diffusivity = polymer.conductivity / (polymer.density * polymer.heatCapacity * scale);
    const history = (neededBiot(theta, (diffusivity * layerTime) / task.layerHeight ** 2) * polymer.conductivity) / task.layerHeight;
    const share = 1 / (1 + Math.exp(-1.7 * (mix[s] ?? 0)));
    needed[s] = lumped * (history / lumped) ** share;
  }
  return needed;
}

interface JetColumns {
  readonly coefficient: Float64Array;
  readonly arriving: Float64Array;
}

function jetColumns(variant: PathVariant, outlet: PathVariant['outlets'][number], k: number, path: SampledPath, air: Air, inputs: UncertainInputs, filmTemperature: number): JetColumns {
  const { count } = inputs;
  const { mouth } = outlet;
  const round = mouth.shape === 'circle';
  const short = round ? mouth.width.value : Math.min(mouth.width.value, mouth.height.value);
  const long = round ? mouth.width.value : Math.max(mouth.width.value, mouth.height.value);
  const equalDiameter = Math.sqrt((4 * long * short) / Math.PI);
  const viscosity = viscosityOfAir(filmTemperature) / air.density * (filmTemperature / 298.15);
  const conductivity = conductivityOfAir(filmTemperature);
  const aim = outletColumn(inputs, variant.ductSlot, k, 'outlet-aim');
  const away = outletColumn(inputs, variant.ductSlot, k, 'outlet-distance');
  const core = sharedColumn(inputs, 'jet-core');
  const convection = sharedColumn(inputs, 'convection');
  const distanceSpread = logSpread(outlet.distance.value, outlet.distance.plusMinus);
  const speeds = path.outlets[k]?.speed;
  const coefficient = new Float64Array(count);
  const arriving = new Float64Array(count);
  // The half-extent of the wetted part: at least four widths, where the law begins to hold, and 12 mm for a usual part.
  const reach = Math.max(4 * short, 12e-3);
  for (let s = 0; s < count; s += 1) {
    const speed = speeds?.[s] ?? 0;
    const distance = outlet.distance.value * Math.exp(distanceSpread * (away[s] ?? 0));
    const coreConstant = 4 * Math.exp(0.35 * (core[s] ?? 0));
    const reached = Math.min(1, Math.sqrt((coreConstant * short) / distance), (coreConstant * equalDiameter) / distance);
    const usual = Math.min(1, Math.sqrt((6 * short) / distance), (6 * equalDiameter) / distance);
    const offset = outlet.miss.value + distance * Math.abs(Math.tan(outlet.aimError.value * 0.6 * (aim[s] ?? 0)));
    const hit = shareAtOffset(offset, jetHalfWidth(distance, short));
    arriving[s] = speed * reached * hit;
    const effective = speed * (reached / usual) * Math.max(0.05, hit);
    const nusseltOverLength = round
      ? roundLaw(effective, short, distance, reach, viscosity)
      : slotLaw(effective, short, distance, reach, viscosity);
    coefficient[s] = nusseltOverLength * conductivity * Math.exp(CONVECTION_SPREAD * (convection[s] ?? 0));
  }
  return { coefficient, arriving };
}

/** Martin's laws without their range report, as Nu over its length; see `slotJetConvection` for source and ranges. */
function slotLaw(speed: number, width: number, distance: number, reach: number, viscosity: number): number {
  const exponent = 0.695 - 1 / (reach / (2 * width) + (distance / (2 * width)) ** 1.33 + 3.06);
  const reynolds = (speed * 2 * width) / viscosity;
  return (PRANDTL_NUMBER_OF_AIR ** 0.42 * 3.06 * reynolds ** exponent) / (reach / width + distance / width + 2.78) / (2 * width);
}

function roundLaw(speed: number, diameter: number, distance: number, reach: number, viscosity: number): number {
  const reynolds = (speed * diameter) / viscosity;
  const over = diameter / Math.max(reach, 2.5 * diameter);
  const shape = (over * (1 - 1.1 * over)) / (1 + 0.1 * (distance / diameter - 6) * over);
  return (PRANDTL_NUMBER_OF_AIR ** 0.42 * shape * 2 * Math.sqrt(reynolds) * Math.sqrt(1 + 0.005 * reynolds ** 0.55)) / diameter;
}
