export {
  FLANK, feedPerLength, filamentArea, filamentSpeed, lineFlow, rectangleArea, roundedArea, spacingWithoutGaps, widthOfRounded,
} from './line-volume';
export { diameterOfOval, flowErrorFromDiameter, flowFactorForDiameter } from './filament-diameter';
export { newStepsPerLength, newTravelPerTurn } from './feeder-calibration';
export { meanWall, newFlowMultiplier } from './flow-multiplier';
export { MELT_DIFFUSIVITY, filamentPressure, meltLimit, meltingPower, pressureFactor, pressureFactorOfFlow } from './flow-limit';
export { deliveryPattern } from './under-extrusion';
export type { Delivery, DeliveryFinding, DeliveryPattern, DeliverySigns, DeliverySuspect } from './under-extrusion';
export { firstLayer } from './first-layer';
export type { FirstLayer } from './first-layer';
export { driedShare, dryingTime, vapourVolume } from './moisture';
