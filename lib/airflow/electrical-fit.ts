import type { FanFacts, FanOutputFacts } from './air-path';

/** One point to look at before buying and again before connecting. */
export interface FitPoint {
  readonly id: 'voltage' | 'running-current' | 'start-current' | 'polarity' | 'drive' | 'wire';
  /** `fits`, `look`: needs a look or a figure, `stop`: do not connect. */
  readonly state: 'fits' | 'look' | 'stop';
  readonly sentence: string;
}

/** Output limit to count on when it is not known, A. Common practice, no source; boards publish 0.5 to 1 A per fan output. */
export const USUAL_OUTPUT_LIMIT = 0.5;
/** Start over running current in published sheets: 1.5 to 2.6 for small fans; reckoned with 3. */
const START_OVER_RUNNING = 3;
/** What all fans of a choice draw together, A; undefined when one of them is not known. Worked: two of 0.06 A draw 0.12 A. */
export function runningCurrentOf(fan: FanFacts): number | undefined {
  return summed(fan, (each) => each.current?.value);
}

/** Share of the supply that a lead may lose before it is told. Common practice, no source. */
const MOST_DROP = 0.05;
/** Resistivity of copper, Ω·m. */
const COPPER = 1.7241e-8;

/**
 * Whether a fan may be connected to an output: voltage, running and start current, polarity, drive, wire.
 * Defers to local codes; work on the mains side of a supply is for qualified people.
 * Worked: a 12 V fan on a 24 V output is a stop; 0.13 A on 0.5 A fits, and its start current of 0.39 A too.
 */
export function electricalFit(fan: FanFacts, output: FanOutputFacts): readonly FitPoint[] {
  return [voltagePoint(fan, output), ...currentPoints(fan, output), polarityPoint(), drivePoint(fan, output), wirePoint(fan, output)];
}

/**
 * Copper wire by American gauge: diameter m, area m², resistance Ω/m, current at 700 circular mil per ampere (bundled, cautious), A.
 * `gauge` 10 to 40; throws outside. Source: gauge law d = 0.127·92^((36-n)/39) mm. Worked: 28 gives 0.3211 mm, 0.2129 Ω/m, 0.23 A.
 */
export function wireOfGauge(gauge: number): { readonly diameter: number; readonly area: number; readonly resistance: number; readonly current: number } {
  if (!(gauge >= 10 && gauge <= 40)) throw new Error(`wireOfGauge: got ${gauge}, expected 10 to 40`);
  const diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39);
  const area = (Math.PI / 4) * diameter ** 2;
  const circularMils = (diameter / 25.4e-6) ** 2;
  return { diameter, area, resistance: COPPER / area, current: circularMils / 700 };
}

/** Of two unlike fans the one that suits the output less speaks. */
function voltagePoint(fan: FanFacts, output: FanOutputFacts): FitPoint {
  const [first, second] = [voltageOfOne(fan, output), fan.second === undefined ? undefined : voltageOfOne(fan.second, output)];
  return second !== undefined && WORSE.indexOf(second.state) > WORSE.indexOf(first.state) ? second : first;
}

const WORSE: readonly FitPoint['state'][] = ['fits', 'look', 'stop'];

function voltageOfOne(fan: FanFacts, output: FanOutputFacts): FitPoint {
  const made = fan.voltage?.value;
  const given = output.voltage?.value;
  const point = (state: FitPoint['state'], sentence: string): FitPoint => ({ id: 'voltage', state, sentence });
  if (made === undefined || given === undefined) return point('look', 'Measure the output’s voltage with a meter and read the fan’s label before you connect anything.');
  if (given > 1.15 * made) return point('stop', `The output gives ${given.toFixed(1)} V, the fan is made for ${made.toFixed(0)} V: it would overheat and can catch fire.`);
  if (given < 0.75 * made) return point('stop', `The output gives ${given.toFixed(1)} V, the fan is made for ${made.toFixed(0)} V: it may not start.`);
  if (given > 1.05 * made) return point('look', `The output gives ${given.toFixed(1)} V, the fan is made for ${made.toFixed(0)} V: it runs above its rating. Look up what its data sheet allows before you connect it.`);
  if (given < 0.9 * made) return point('look', `At ${given.toFixed(1)} V it runs slower than its rating.`);
  return point('fits', given < 0.95 * made ? `${given.toFixed(1)} V for a fan of ${made.toFixed(0)} V: a little slower than its rating.` : `${made.toFixed(0)} V on both.`);
}

function summed(fan: FanFacts, of: (each: FanFacts) => number | undefined): number | undefined {
  const own = of(fan);
  const other = fan.count === 1 ? 0 : fan.second === undefined ? own : of(fan.second);
  return own === undefined || other === undefined ? undefined : own + other;
}

function currentPoints(fan: FanFacts, output: FanOutputFacts): FitPoint[] {
  const limit = output.currentLimit?.value ?? USUAL_OUTPUT_LIMIT;
  const assumed = output.currentLimit === undefined ? ' The output’s limit is not known; half an ampere is assumed.' : '';
  const running = runningCurrentOf(fan);
  const start = summed(fan, (each) => each.startCurrent?.value ?? (each.current === undefined ? undefined : START_OVER_RUNNING * each.current.value));
  if (running === undefined || start === undefined) return [{ id: 'running-current', state: 'look', sentence: `Read the current on the fan’s label; the output gives ${limit.toFixed(2)} A.${assumed}` }];
  return [
    running > limit
      ? { id: 'running-current', state: 'stop', sentence: `It draws ${running.toFixed(2)} A, the output gives ${limit.toFixed(2)} A.${assumed}` }
      : { id: 'running-current', state: running > 0.8 * limit || fan.isClaimRefused ? 'look' : 'fits', sentence: `${running.toFixed(2)} A of ${limit.toFixed(2)} A.${assumed}${fan.isClaimRefused ? ' Its figures cannot all be true: measure its current before it runs for long.' : ''}` },
    { id: 'start-current', state: start > limit || output.currentLimit === undefined ? 'look' : 'fits', sentence: `It may draw ${start.toFixed(2)} A while starting; the output gives ${limit.toFixed(2)} A.${assumed}` },
  ];
}

function polarityPoint(): FitPoint {
  return { id: 'polarity', state: 'look', sentence: 'With the power off, mark plus on both sides. Connected the wrong way round the fan can be destroyed; some have no protection.' };
}

function drivePoint(fan: FanFacts, output: FanOutputFacts): FitPoint {
  const point = (state: FitPoint['state'], sentence: string): FitPoint => ({ id: 'drive', state, sentence });
  const fans = fan.second === undefined ? [fan] : [fan, fan.second];
  if (output.drive === 'four-wire' && fans.some((each) => each.wires !== 4)) return point('stop', 'This output sends its speed command on a fourth wire; this fan has none and would run at full speed or not at all.');
  if (fans.some((each) => each.wires === 4) && output.drive !== 'four-wire') return point('look', 'Leave the command and speed wires of this fan unconnected; never put supply on them. It then runs at full speed.');
  if (output.drive === 'switched-low-side') return point('look', 'Plus is live on this output even when the fan stands still. Do not join its minus to another fan’s or to ground.');
  return output.drive === undefined ? point('look', 'Find out how the output switches: steady, switched minus, switched plus, or four wires.') : point('fits', 'The drive suits a two-wire fan.');
}

function wirePoint(fan: FanFacts, output: FanOutputFacts): FitPoint {
  const point = (state: FitPoint['state'], sentence: string): FitPoint => ({ id: 'wire', state, sentence });
  const current = runningCurrentOf(fan);
  if (output.wireGauge === undefined || current === undefined) return point('look', 'Fan leads are usually gauge 26 to 28. Secure them away from heater and moving parts.');
  const wire = wireOfGauge(output.wireGauge);
  const drop = 2 * (output.wireLength?.value ?? 1) * wire.resistance * current;
  if (current > 2 * wire.current) return point('stop', `Gauge ${output.wireGauge} is too thin for ${current.toFixed(2)} A.`);
  const lost = `Gauge ${output.wireGauge} loses ${(1000 * drop).toFixed(0)} mV there and back`;
  const supply = output.voltage?.value ?? fan.voltage?.value;
  if (supply !== undefined && drop > MOST_DROP * supply) return point('look', `${lost}, ${Math.round((100 * drop) / supply)} % of ${supply.toFixed(0)} V: the fan runs slower. Take a thicker or a shorter wire.`);
  return point(current > wire.current ? 'look' : 'fits', `${lost}.`);
}
