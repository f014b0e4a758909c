import { airSpeedAtOutlet } from './formulas/air-speed-at-outlet';
import { airSpeedOnNozzle } from './formulas/air-speed-on-nozzle';
import { bagFill } from './formulas/bag-fill';
import { beltTensionFromPitch } from './formulas/belt-tension-from-pitch';
import { countOf } from './formulas/count-of';
import { curlHeight } from './formulas/curl-height';
import { differenceOfTwo } from './formulas/difference-of-two';
import { driverCurrentRms } from './formulas/driver-current-rms';
import { driverCurrent } from './formulas/driver-current';
import { extrudedLength } from './formulas/extruded-length';
import { extrudedMass } from './formulas/extruded-mass';
import { fanSpeedFromSound } from './formulas/fan-speed-from-sound';
import { filamentDiameter } from './formulas/filament-diameter';
import { heaterResistance } from './formulas/heater-resistance';
import { jetThrustOnScale } from './formulas/jet-thrust-on-scale';
import { layerTime } from './formulas/layer-time';
import { massLoss } from './formulas/mass-loss';
import { ratioOfTwo } from './formulas/ratio-of-two';
import { repeatMean } from './formulas/repeat-mean';
import { rippleFrequency } from './formulas/ripple-frequency';
import { scaleFactor } from './formulas/scale-factor';
import { shiftSize } from './formulas/shift-size';
import { singleWallFlow } from './formulas/single-wall-flow';
import { spacing } from './formulas/spacing';
import { staticPressure } from './formulas/static-pressure';
import { supplyVoltage } from './formulas/supply-voltage';
import { temperatureDrop } from './formulas/temperature-drop';
import { thermistorTemperature } from './formulas/thermistor-temperature';
import { waterColumn } from './formulas/water-column';
import type { Formula } from './formula';

/** Every way to turn readings into a quantity, by the name that a method file uses. */
const REGISTRY = {
  'air-speed-at-outlet': airSpeedAtOutlet,
  'air-speed-on-nozzle': airSpeedOnNozzle,
  'bag-fill': bagFill,
  'belt-tension-from-pitch': beltTensionFromPitch,
  'count-of': countOf,
  'curl-height': curlHeight,
  'difference-of-two': differenceOfTwo,
  'driver-current-rms': driverCurrentRms,
  'driver-current': driverCurrent,
  'extruded-length': extrudedLength,
  'extruded-mass': extrudedMass,
  'fan-speed-from-sound': fanSpeedFromSound,
  'filament-diameter': filamentDiameter,
  'heater-resistance': heaterResistance,
  'jet-thrust-on-scale': jetThrustOnScale,
  'layer-time': layerTime,
  'mass-loss': massLoss,
  'ratio-of-two': ratioOfTwo,
  'repeat-mean': repeatMean,
  'ripple-frequency': rippleFrequency,
  'scale-factor': scaleFactor,
  'shift-size': shiftSize,
  'single-wall-flow': singleWallFlow,
  spacing,
  'static-pressure': staticPressure,
  'supply-voltage': supplyVoltage,
  'temperature-drop': temperatureDrop,
  'thermistor-temperature': thermistorTemperature,
  'water-column': waterColumn,
} as const satisfies Record<string, Formula>;

/** Name of a formula, as in `formula: bag-fill`. */
export type FormulaId = keyof typeof REGISTRY;

/** The formulas by name. */
export const FORMULAS: Readonly<Record<FormulaId, Formula>> = REGISTRY;

/** True when the text names a formula. */
export function isFormulaId(text: string): text is FormulaId {
  return Object.hasOwn(REGISTRY, text);
}
