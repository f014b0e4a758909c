import { speedRatioAtDuty, speedRatioAtVoltage } from './fan-laws';
import type { Fact, FanClaim, FanFacts, SectionFacts, ShapeFacts } from './air-path';
import { exponentFromMidPoint, type CurvePoint } from './fan-curve';
import type { FanKind } from './fan-ratings';
import { freeFlowOfFrame, freeFlowOfKind, maxPressureFromFreeFlow, type Spread } from './frame-statistics';
import type { PathFields } from './path-fields';
import { readFanPoints, readFanPointsText } from './read-fan-points';
import { readSection } from './read-duct';

/** Reads a fan of the file, or two that work together; gaps are filled from the published ratings of the frame, with wide limits. */
export function readFan(fields: PathFields, fallbackName: string): FanFacts {
  const one = readOne(fields, fallbackName);
  const second = fields.has('second') ? readSecond(fields.object('second')) : undefined;
  const count = fields.count('count', 1, 2) ?? (second === undefined ? 1 : 2);
  const arrangement = fields.choice('arrangement', ['series', 'parallel', 'own-ducts'] as const);
  if (count === 1 && second !== undefined) fields.tell('second-of-one', 'second', 'A second fan is described here, but the count says one.', 'Write a count of 2, or take the second fan out.');
  if (count === 2 && arrangement === undefined) fields.assume('arrangement', 'Say how the two fans work together: series, parallel or own-ducts.');
  fields.close();
  return count === 1 ? one : { ...one, count, arrangement: arrangement ?? 'parallel', second };
}

/** The other of two unlike fans. How the two stand is said at the first. */
function readSecond(fields: PathFields): FanFacts {
  const second = readOne(fields, 'second fan');
  fields.close();
  return second;
}

function readOne(fields: PathFields, fallbackName: string): FanFacts {
  const kind = fields.choice('kind', ['blower', 'axial'] as const) ?? 'blower';
  const frame = readFrame(fields);
  const speed = fields.quantity('speed', 'rotation-speed', { moreThan: 0, max: 1000, usualShare: 0.1 });
  const claim = fields.choice('claim', ['advertised', 'data-sheet', 'measured'] as const);
  const points = readPoints(fields, kind);
  const flow = readFreeFlow(fields, kind, frame, speed?.value, points, claim);
  const pressure = readMaxPressure(fields, kind, frame, flow, speed?.value, points, claim);
  const voltage = fields.quantity('voltage', 'voltage', { moreThan: 0, max: 60 });
  return {
    name: fields.text('name') ?? fallbackName,
    kind,
    frame,
    claim: flow.basis === 'assumed' ? 'usual' : (claim ?? 'advertised'),
    freeFlow: flow,
    expectedFlow: undefined,
    isClaimRefused: false,
    maxPressure: pressure,
    shape: readShape(fields, flow, pressure, points),
    outlet: fields.has('outlet') ? readSection(fields.object('outlet'), 0.3e-3) : usualOutlet(fields, frame, kind),
    speedRatio: readSpeedRatio(fields, voltage),
    count: 1,
    arrangement: 'single',
    second: undefined,
    voltage,
    current: fields.quantity('current', 'current', { moreThan: 0, max: 10 }),
    currentIsLargest: fields.yes('currentIsLargest'),
    speed,
    startCurrent: fields.quantity('startCurrent', 'current', { moreThan: 0, max: 30 }),
    wires: fields.count('wires', 2, 4),
  };
}

function readFrame(fields: PathFields): string | undefined {
  const typed = fields.text('frame');
  if (typed === undefined) return undefined;
  const frame = frameOf(typed);
  if (frame === undefined) fields.tell('unknown-frame', 'frame', `“${typed}” is not a frame size.`, 'Measure side and depth of the housing in mm.', '"5015", "50 × 15" or "50x50x15"');
  return frame;
}

/** `50 x 15 mm`, `50x50x15`, `5015` (words may follow, as on a label: `5015 24V`) as the trade's four digits; undefined for anything else. */
export function frameOf(typed: string): string | undefined {
  const sides = /^\s*(\d{2,3})(?:[.,]0)?\s*(?:mm)?\s*[x×*]\s*(?:(\d{2,3})\s*(?:mm)?\s*[x×*]\s*)?(\d{1,2})\s*(?:mm)?\s*$/iu.exec(typed);
  if (sides !== null) return `${sides[1] ?? ''}${(sides[3] ?? '').padStart(2, '0')}`;
  return /^\s*(\d{4})(?=\s|$)/u.exec(typed)?.[1];
}

function readPoints(fields: PathFields, kind: FanKind): readonly CurvePoint[] | undefined {
  const context = { where: fields.placeOf('points'), kind, stallMarked: fields.yes('stall') };
  if (!fields.has('points')) return undefined;
  const raw = fields.take('points');
  const reading = typeof raw === 'string' ? readFanPointsText(raw, context) : readFanPoints(fields.list('points').map((row) => {
    const typed = { flow: row.text('flow') ?? '', pressure: row.text('pressure') ?? '' };
    row.close();
    return typed;
  }), context);
  fields.problems.push(...reading.problems);
  return reading.value;
}

function readFreeFlow(fields: PathFields, kind: FanKind, frame: string | undefined, speed: number | undefined, points: readonly CurvePoint[] | undefined, claim: Exclude<FanClaim, 'usual'> | undefined): Fact<'volume-flow'> {
  const last = points?.[points.length - 1];
  // An advertised figure is worth ±45 %, a data sheet's ±15 %: guaranteed over typical flow is 0.85 to 0.90 in five sheets.
  const share = claim === 'measured' ? 0.08 : claim === 'data-sheet' ? 0.15 : 0.45;
  if (last !== undefined) tellPointsGoFirst(fields, 'freeFlow', 'last flow');
  if (last !== undefined) return { kind: 'volume-flow', value: last.flow, plusMinus: (claim === 'measured' ? 0.08 : 0.15) * last.flow, basis: 'given' };
  const usual = (frame === undefined ? undefined : freeFlowOfFrame(frame, kind, speed)) ?? freeFlowOfKind(kind);
  return fields.quantityOr('freeFlow', 'volume-flow', { moreThan: 0, max: 0.05, usualShare: share }, {
    ...asAssumption(usual),
    next: 'Measure the flow with nothing attached, with a bag or an air-speed meter on a nozzle.',
  });
}

function readMaxPressure(fields: PathFields, kind: FanKind, frame: string | undefined, flow: Fact<'volume-flow'>, speed: number | undefined, points: readonly CurvePoint[] | undefined, claim: Exclude<FanClaim, 'usual'> | undefined): Fact<'pressure'> {
  const first = points?.[0];
  if (first !== undefined) tellPointsGoFirst(fields, 'maxPressure', 'first pressure');
  // As a speed moves them: twice the share of the flow.
  if (first !== undefined) return { kind: 'pressure', value: first.pressure, plusMinus: (claim === 'measured' ? 0.15 : 0.3) * first.pressure, basis: 'given' };
  const share = claim === 'measured' ? 0.25 : claim === 'data-sheet' ? 0.3 : 0.9;
  const guess = maxPressureFromFreeFlow(flow.value, kind, frame, flow.basis === 'given' ? undefined : speed);
  return fields.quantityOr('maxPressure', 'pressure', { moreThan: 0, max: 5000, usualShare: share }, {
    ...asAssumption(guess),
    next: 'Look up the static pressure on the data sheet, or measure it with the outlet sealed.',
  });
}

function tellPointsGoFirst(fields: PathFields, key: string, taken: string): void {
  if (fields.has(key)) fields.tell('points-go-first', key, `A table of the curve is in use as well; its ${taken} counts.`, 'Take one of the two out.', undefined, 'note');
}

function asAssumption(spread: Spread): { value: number; plusMinus: number } {
  return { value: spread.median, plusMinus: Math.max(spread.high - spread.median, spread.median - spread.low) };
}

function readShape(fields: PathFields, flow: Fact<'volume-flow'>, pressure: Fact<'pressure'>, points: readonly CurvePoint[] | undefined): ShapeFacts {
  const middle = fields.has('midPoint') ? fields.object('midPoint') : undefined;
  if (points !== undefined) return { kind: 'points', points };
  if (middle === undefined) return { kind: 'band' };
  const midFlow = middle.quantity('flow', 'volume-flow', { moreThan: 0 });
  const midPressure = middle.quantity('pressure', 'pressure', { moreThan: 0 });
  middle.close();
  if (midFlow === undefined || midPressure === undefined) return { kind: 'band' };
  if (midFlow.value >= flow.value) {
    fields.tell('beyond-free-flow', 'midPoint.flow', 'This flow is not below the free flow.', 'Check both; with nothing attached the fan moves the most air.', 'less than freeFlow');
    return { kind: 'band' };
  }
  if (midPressure.value >= pressure.value) {
    fields.tell('beyond-max-pressure', 'midPoint.pressure', 'This pressure is not below the maximum pressure.', 'Check both; a sealed outlet gives the highest pressure.', 'less than maxPressure');
    return { kind: 'band' };
  }
  return { kind: 'mid-point', exponent: Math.min(4, Math.max(0.6, exponentFromMidPoint(midFlow.value / flow.value, midPressure.value / pressure.value))) };
}

function readSpeedRatio(fields: PathFields, voltage: Fact<'voltage'> | undefined): Fact<'ratio'> {
  const supply = fields.quantity('supply', 'voltage', { moreThan: 0, max: 60 });
  const duty = fields.quantity('duty', 'ratio', { moreThan: 0, max: 1 });
  let value = 1;
  let share = 0;
  if (supply !== undefined && voltage !== undefined) {
    const ratio = supply.value / voltage.value;
    const band = speedRatioAtVoltage(ratio);
    if (!band.starts) fields.tell('may-not-start', 'supply', 'Below three quarters of its voltage this fan may not start.', 'Give the fan the voltage on its label.', undefined, 'note');
    if (ratio > 1.3) fields.tell('over-voltage', 'supply', 'The supply is far above the voltage on the fan: it will overheat and can catch fire.', 'Switch off. Fit a fan for this voltage.', `up to ${(1.15 * voltage.value).toFixed(1)} V`, 'note');
    value *= Math.min(band.middle, 1.3);
    share += (band.high - band.low) / 2 / band.middle;
  }
  if (duty !== undefined) {
    const band = speedRatioAtDuty(duty.value);
    if (!band.starts) fields.tell('may-not-start', 'duty', 'At this duty many fans do not start.', 'Try whether it starts from rest.', undefined, 'note');
    value *= band.middle;
    share += (band.high - band.low) / 2 / band.middle;
  }
  return { kind: 'ratio', value, plusMinus: share * value, basis: 'given' };
}

/** Outlets of generic fans, mm: from an open library of measured parts; axial ones by their bore less the hub. */
const USUAL_OUTLETS: Readonly<Record<string, readonly [number, number]>> = {
  '5015-blower': [20, 12.2], '5020-blower': [20, 17], '4020-blower': [29.3, 17.1], '4010-blower': [27.8, 6.5], '4007-blower': [22, 5],
  '3010-blower': [21.2, 7.8], '7530-blower': [25, 16],
};

function usualOutlet(fields: PathFields, frame: string | undefined, kind: FanKind): SectionFacts {
  fields.assume('outlet', 'Measure the inner width and height of the fan outlet.');
  const known = frame === undefined ? undefined : USUAL_OUTLETS[`${frame}-${kind}`];
  const share = known === undefined ? 0.35 : 0.08;
  const fact = (millimetres: number): Fact<'length'> => ({ kind: 'length', value: millimetres * 1e-3, plusMinus: share * millimetres * 1e-3, basis: 'assumed' });
  if (kind === 'axial') {
    const side = Number((frame ?? '4010').slice(0, 2));
    return { shape: 'circle', width: fact(0.85 * side), height: fact(0.85 * side) };
  }
  const [width, height] = known ?? [20, 11];
  return { shape: 'rectangle', width: fact(width), height: fact(height) };
}

