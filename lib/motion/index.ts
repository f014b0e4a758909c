export { driveLengths } from './drive';
export type { BeltDrive, Drive, DriveLengths, ScrewDrive } from './drive';
export { NO_DISCRIMINATION, expectedLatticeEvidence, latticeLikelihood } from './lattice-likelihood';
export type { LatticeOptions } from './lattice-likelihood';
export { lostSteps, motorsFromShift, shiftFromMotors } from './crossed-belts';
export type { MotorPair } from './crossed-belts';
export { rotationTest } from './rotation-test';
export type { Rotation } from './rotation-test';
export { SHIFT_MECHANISMS, USUAL_SHIFT_CHANCES, explainShifts } from './layer-shift';
export type { Kinematics, MechanismChance, Shift, ShiftFinding, ShiftMachine, ShiftMechanism } from './layer-shift';
export {
  beltForce, collisionForce, electricalFrequency, fieldStiffness, holdingForce, lagUnderLoad, motorTorque, rotorAsMass, windingVoltage,
} from './force-budget';
export {
  aliasedHeight, driveMarks, feederSpacing, heightOfPeriod, layerBeat, spacingOnWall, timedHeight, timedSpacing,
} from './mark-spacings';
export type { MarkMotor, MarkOrigin } from './mark-spacings';
export { followsCondition, matchMarks } from './match-marks';
export type { MarkMatch, MarkMatches, MarksAt, MeasuredMarks } from './match-marks';
export {
  dampingFrom, distanceAfter, frequencyAfterMass, heightLeft, largestAmplitude, rippleAmplitude, rippleSpacing, speedingUpDistance, steadyLength,
} from './ringing';
export { SHORTEST_SPAN, pitchFromTension, tensionFromPitch } from './belt-span';
