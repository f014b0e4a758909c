export { certainFigures } from './certain-figures';
export { AMONG, idleChecks, type Starts } from './idle-checks';
export { keptPages, type KeptPages } from './kept-because';
export { outdoneRemedies, type OutdoneRemedy } from './outdone-remedies';
export { SEPARATES, pairsOfCauses, unseparatedProblems, type PairOfCauses, type Separation } from './pairs-of-causes';
