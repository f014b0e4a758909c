import { nearestName } from '@/lib/problems';
import { formatRange, formatValue } from '@/lib/units';
import type { AirPath, CandidateFacts, Fact, FanFacts, FanOutputFacts, OutletFacts, PathReading, PrintFacts, SectionFacts, SideSeen } from './air-path';
import type { PathFields } from './path-fields';
import { readDuct, readLeaks, readOutlets } from './read-duct';
import { readFan } from './read-fan';
import { credibilityOfFan } from './claim-of-fan';
import type { FanFigures } from './rating-credibility';
import { pressureAtAltitude, STANDARD_PRESSURE } from './air';

const ZERO_CELSIUS = 273.15;

/** Air of the room: temperature, and pressure from a barometer or the altitude. */
export function readAir(fields: PathFields): AirPath['air'] {
  const altitude = fields.quantity('altitude', 'length', { min: -500, max: 5000 });
  const usualPressure = altitude === undefined ? STANDARD_PRESSURE : pressureAtAltitude(altitude.value);
  const air = {
    temperature: fields.quantity('temperature', 'temperature', { min: ZERO_CELSIUS - 10, max: ZERO_CELSIUS + 90, usualPlusMinus: 3 })
      ?? assumed('temperature', ZERO_CELSIUS + 23, 6),
    pressure: fields.quantity('pressure', 'pressure', { min: 50_000, max: 110_000, usualPlusMinus: 500 }) ?? assumed('pressure', usualPressure, 3000),
    humidity: fields.quantity('humidity', 'ratio', { min: 0, max: 1, usualPlusMinus: 0.1 }) ?? assumed('ratio', 0.5, 0.3),
  };
  fields.close();
  return air;
}

/** What the print asks for: polymer, layer and temperatures. */
export function readPrint(fields: PathFields, polymers: readonly string[]): PrintFacts {
  const print: PrintFacts = {
    polymer: readPolymer(fields, polymers),
    layerTime: fields.quantityOr('layerTime', 'time', { moreThan: 0, max: 36_000, usualShare: 0.05 }, { value: 12, plusMinus: 8, next: 'Time one layer at the height where the fault starts.' }),
    layerHeight: fields.quantityOr('layerHeight', 'length', { moreThan: 0, max: 2e-3, usualShare: 0.05 }, { value: 0.2e-3, plusMinus: 0.08e-3, next: 'Read the layer height from the print settings.' }),
    lineWidth: fields.quantity('lineWidth', 'length', { moreThan: 0, max: 3e-3, usualShare: 0.05 }) ?? assumed('length', 0.45e-3, 0.05e-3),
    nozzleTemperature: fields.quantityOr('nozzleTemperature', 'temperature', { min: ZERO_CELSIUS + 120, max: ZERO_CELSIUS + 500, usualPlusMinus: 5 }, { value: ZERO_CELSIUS + 215, plusMinus: 20, next: 'Read the nozzle temperature while it prints.' }),
    chamberTemperature: fields.quantityOr('chamberTemperature', 'temperature', { min: ZERO_CELSIUS - 10, max: ZERO_CELSIUS + 150, usualPlusMinus: 4 }, { value: ZERO_CELSIUS + 30, plusMinus: 10, next: 'Hold a thermometer beside the part while it prints.' }),
    layers: fields.count('layers', 1, 100_000),
    sides: readSides(fields),
  };
  fields.close();
  return print;
}

/** Fans and ducts that the person is thinking of. */
export function readCandidates(parent: PathFields, fanOutlet: SectionFacts): CandidateFacts[] {
  return parent.list('candidates').map((fields, k) => {
    const name = fields.text('name') ?? `candidate ${k + 1}`;
    const fan = fields.has('fan') ? readFan(fields.object('fan'), name) : undefined;
    const duct = fields.has('duct') || fields.has('outlets')
      ? readDuctOnOffer(fields, fanOutlet)
      : undefined;
    if (fan === undefined && duct === undefined) fields.tell('nothing-offered', 'fan', 'This candidate has neither a fan nor a duct.', 'Describe the fan, the duct, or both.');
    const trusted = fields.has('trusted') ? readTrusted(fields.object('trusted')) : undefined;
    const candidate: CandidateFacts = {
      id: `candidate-${k + 1}`,
      name, duct, trusted,
      fan: believedFan(fields, fan, trusted),
      price: fields.money('price'),
      handsTime: fields.quantity('hands', 'time', { min: 0 })?.value ?? (fan === undefined ? 25 * 60 : 40 * 60),
      printingTime: fields.quantity('printing', 'time', { min: 0 })?.value ?? 0,
    };
    fields.close();
    return candidate;
  });
}

/** A fan with the trusted figures that stand beside it, where its claim cannot be believed: as for a fan on offer. */
export function readBelieved(fields: PathFields, fan: FanFacts, trusted: FanFigures | undefined): FanFacts {
  return believedFan(fields, fan, trusted, 'Measure its free flow: it is there, and a reading counts before any claim.') ?? fan;
}

/**
 * The fan as its own speed and power allow it, beside a trusted one or beside published ratings of its size, instead of as it is
 * claimed: where that is asked for, and where the claim cannot be believed and nobody asked for the claim. Told among what was assumed.
 */
function believedFan(fields: PathFields, fan: FanFacts | undefined, trusted: FanFigures | undefined, next = 'Measure its free flow when it is there, or go back to the claim at the claim check.'): FanFacts | undefined {
  const asked = fields.has('reckonWithBand') ? fields.yes('reckonWithBand') : undefined;
  const credibility = fan === undefined ? undefined : credibilityOfFan(fan, trusted);
  const band = credibility?.band;
  const isClaimRefused = credibility?.verdict === 'not-credible' || credibility?.verdict === 'impossible';
  if (asked === true && band === undefined) fields.tell('no-band', 'reckonWithBand', 'There is no band to reckon with: an advertised fan of a known size, or a trusted one beside it with a speed or a current each, is needed.', 'Add those figures, or take this out; the claim counts until then.', undefined, 'note');
  if (fan === undefined || band === undefined || !(asked ?? isClaimRefused)) return fan && { ...fan, isClaimRefused };
  const why = isClaimRefused ? `, which is ${credibility.verdict === 'impossible' ? 'impossible' : 'not credible'}` : '';
  fields.tell('band-of-claim', 'fan.freeFlow', `Reckoned with ${formatRange(band.low, band.high, 'L/s')}, the band of the claim check, instead of the claimed ${formatValue(fan.freeFlow.value, 'L/s')}${why}.`, next, undefined, 'note');
  return { ...fan, isClaimRefused, expectedFlow: { low: band.low, high: band.high } };
}

/** Figures of a trusted fan of the same frame. Without its free flow there is nothing to hold a claim against. */
export function readTrusted(fields: PathFields): FanFigures | undefined {
  const freeFlow = fields.quantity('freeFlow', 'volume-flow', { moreThan: 0, max: 0.05 });
  const speed = fields.quantity('speed', 'rotation-speed', { moreThan: 0, max: 1000 });
  const voltage = fields.quantity('voltage', 'voltage', { moreThan: 0, max: 60 });
  const current = fields.quantity('current', 'current', { moreThan: 0, max: 10 });
  const currentIsLargest = fields.yes('currentIsLargest');
  fields.close();
  if (freeFlow === undefined) return undefined;
  return {
    freeFlow: freeFlow.value, currentIsLargest,
    ...(speed === undefined ? {} : { speed: speed.value }), ...(voltage === undefined ? {} : { voltage: voltage.value }), ...(current === undefined ? {} : { current: current.value }),
  };
}

function readDuctOnOffer(fields: PathFields, fanOutlet: SectionFacts): NonNullable<CandidateFacts['duct']> {
  const duct = readDuct(fields.object('duct'), fanOutlet);
  const outlets = readOutlets(fields);
  return { duct, outlets, leaks: fields.has('leaks') ? readLeaks(fields, outlets) : [] };
}

const KIND_OF_READING = {
  'free-flow': 'volume-flow', 'flow-in-duct': 'volume-flow', 'outlet-speed': 'speed', 'static-pressure': 'pressure',
  'max-pressure': 'pressure', 'fan-speed': 'rotation-speed',
} as const;

/** Usual 95 % shares of a reading when none is typed: vane or bag about 14 %, gauge 10 %, speed by sound 2 % (sheet, section 3.4). */
const USUAL_SHARE = {
  'free-flow': 0.14, 'flow-in-duct': 0.14, 'outlet-speed': 0.14, 'static-pressure': 0.1, 'max-pressure': 0.1, 'fan-speed': 0.03,
} as const;

/** Readings taken on the path. */
export function readMeasured(parent: PathFields, outlets: readonly OutletFacts[], fan: FanFacts): PathReading[] {
  return parent.list('measured').flatMap((fields): PathReading[] => {
    const what = fields.choice('what', ['free-flow', 'flow-in-duct', 'outlet-speed', 'static-pressure', 'max-pressure', 'fan-speed'] as const);
    if (what === undefined && !fields.has('what')) fields.tell('missing', 'what', 'It is not said what was measured.', 'Name what was measured.', Object.keys(KIND_OF_READING).join(', '));
    const value = what === undefined ? undefined : fields.quantity('value', KIND_OF_READING[what], { min: 0, usualShare: USUAL_SHARE[what] });
    if (what !== undefined && !fields.has('value')) fields.tell('missing', 'value', 'The reading itself is missing.', 'Add the value with its unit, and ± if known.', '"3.0 ± 0.6 m/s"');
    const outlet = what === 'outlet-speed' ? outletOf(fields, outlets) : undefined;
    if (what !== 'outlet-speed') fields.take('at');
    const ofFan = fields.choice('fan', ['first', 'second'] as const);
    const misplaced = ofFan !== 'second' ? undefined : !isOfOneFan(what) ? 'It is a reading of the whole path, not of one fan.' : fan.second === undefined ? 'No second fan with figures of its own is described.' : undefined;
    if (misplaced !== undefined) fields.tell('no-second-fan', 'fan', `${misplaced} The reading is left out.`, 'Take “fan” out of this reading, or describe the second fan.', undefined, 'note');
    fields.close();
    if (misplaced !== undefined || what === undefined || value === undefined || (what === 'outlet-speed' && outlet === undefined)) return [];
    // A reading cannot be sharper than half a percent; without this a typed ± 0 would leave no sample alive.
    return [{ what, outlet, ...(ofFan === 'second' ? { fan: ofFan } : {}), value: value.value, plusMinus: Math.max(value.plusMinus, 0.005 * value.value, 1e-9) }];
  });
}

function isOfOneFan(what: PathReading['what'] | undefined): boolean {
  return what === 'free-flow' || what === 'max-pressure' || what === 'fan-speed';
}

/** The output that drives the fan. */
export function readOutput(fields: PathFields): FanOutputFacts {
  const output: FanOutputFacts = {
    voltage: fields.quantity('voltage', 'voltage', { moreThan: 0, max: 60 }),
    currentLimit: fields.quantity('currentLimit', 'current', { moreThan: 0, max: 30 }),
    drive: fields.choice('drive', ['steady', 'switched-low-side', 'switched-high-side', 'four-wire'] as const),
    wireGauge: fields.count('wireGauge', 10, 40),
    wireLength: fields.quantity('wireLength', 'length', { moreThan: 0, max: 20 }),
  };
  fields.close();
  return output;
}

function readSides(parent: PathFields): SideSeen[] {
  return parent.list('sides').flatMap((fields): SideSeen[] => {
    const direction = fields.quantity('direction', 'angle', { min: -2 * Math.PI, max: 2 * Math.PI });
    if (!fields.has('direction')) fields.tell('missing', 'direction', 'It is not said which way this side faces.', 'Say where it faces: 0° right, 90° back, 180° left, 270° front.');
    if (!fields.has('held')) fields.tell('missing', 'held', 'It is not said how this side came out.', 'Write true if its edges stayed flat, false if they curled.', 'true or false');
    const held = fields.yes('held');
    fields.close();
    return direction === undefined ? [] : [{ direction: direction.value, held }];
  });
}

function readPolymer(fields: PathFields, polymers: readonly string[]): string {
  const typed = fields.text('polymer');
  if (typed === undefined) {
    fields.assume('polymer', 'Read the material from the spool.');
    return polymers[0] ?? 'PLA';
  }
  const found = polymers.find((name) => name.toLowerCase() === typed.toLowerCase());
  if (found !== undefined) return found;
  const near = nearestName(typed, polymers);
  fields.tell('unknown-polymer', 'polymer', `“${typed.slice(0, 40)}” is not known here.`, near === undefined ? 'Take the polymer that it is based on.' : `Write ${near} if that is meant.`, polymers.join(', '));
  return polymers[0] ?? 'PLA';
}

function outletOf(fields: PathFields, outlets: readonly OutletFacts[]): number | undefined {
  const typed = fields.text('at');
  const index = outlets.findIndex((outlet) => outlet.name === typed);
  if (index >= 0) return index;
  fields.tell('unknown-outlet', 'at', typed === undefined ? 'It is not said at which outlet.' : `No outlet is called “${typed.slice(0, 40)}”.`, 'Name the outlet as in the list of outlets.', outlets.map((outlet) => outlet.name).join(', '));
  return undefined;
}

function assumed<K extends Fact['kind']>(kind: K, value: number, plusMinus: number): Fact<K> {
  return { kind, value, plusMinus, basis: 'assumed' };
}
