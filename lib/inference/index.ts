export type { Answer, Cause, Cost, Gate, GateFeed, GateLink, Inhibitor, JointFactor, LevelTable, Net, TooDense } from './net';
export { answer, LIMIT_UNITS, type AnswerOptions, type Impossible, type Outcome } from './answer';
export { mulberry32 } from './mulberry32';
