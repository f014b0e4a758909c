export { ChanceAxis, ChanceBar, type ChanceBarProps } from './chance-bar';
export { CurveChart, type Curve, type CurveChartProps, type OperatingPoint } from './curve-chart';
export { IntervalAxis, IntervalBar, IntervalRows, type Need, type OptionInterval } from './interval-rows';
export { NumberLine, type MeaningZone, type NumberLineProps } from './number-line';
export { ReadingStrip, type ReadingStripProps } from './reading-strip';
export { bareShare, shareRange, shownShare } from './shown-share';
export { WeightBar, weightWords, type WeightBarProps } from './weight-bar';
