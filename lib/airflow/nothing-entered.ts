import type { AirPath, FanFacts, OutletFacts } from './air-path';

/**
 * True while a path rests on usual values alone: no size, flow or pressure of a fan that is there, no mouth, and no reading. Nothing
 * can be said of it then. Volts and amperes of a label, a duct or the print by themselves say nothing about the air either.
 */
export function nothingEntered({ fan, outlets, measured }: Pick<AirPath, 'fan' | 'outlets' | 'measured'>): boolean {
  return measured.length === 0 && !isFanKnown(fan) && !(fan.second !== undefined && isFanKnown(fan.second)) && !outlets.some(isMouthKnown);
}

function isFanKnown({ frame, freeFlow, maxPressure }: FanFacts): boolean {
  return frame !== undefined || freeFlow.basis === 'given' || maxPressure.basis === 'given';
}

function isMouthKnown({ mouth }: OutletFacts): boolean {
  return mouth.width.basis === 'given' || mouth.height.basis === 'given';
}
