import type { Prepared, Lookahead } from './prepared';
import { combination, cumulativeForms, gateOf, levelCount, productGate, stateCount, type Check, type ProductForm } from './check-question';

/** P(level) and P(state of a cause, level) given the evidence, per level of a check; states flat. */
export interface LevelJoints {
  readonly chances: readonly number[];
  readonly states: readonly Float64Array[];
}

/** Exact joint distribution of every cause with the levels of a check: one sweep per level but one. */
export function levelJoints(prepared: Prepared, check: Check): LevelJoints {
  if (check.on.kind === 'states') return jointsOfStates(prepared, check.on.causes, levelCount(prepared.net, check));
  const gate = productGate(prepared, check);
  return gate === undefined ? jointsOfTiedGate(prepared, check) : jointsOfGate(prepared, cumulativeForms(gate));
}

/** Single levels from cumulative ones. Rounding is 1e-16 of everything, which a score does not feel. */
function jointsOfGate(prepared: Prepared, forms: readonly ProductForm[]): LevelJoints {
  const chances: number[] = [];
  const states: Float64Array[] = [];
  let chanceBelow = 0;
  let below: Float64Array = new Float64Array(prepared.states.length);
  for (const form of [...forms, undefined]) {
    const upTo = form === undefined ? undefined : prepared.whatIfFactors(form.factors);
    const chance = upTo === undefined || form === undefined ? 1 : form.constant * chanceOf(prepared, upTo);
    const joint = scaled(upTo?.states ?? prepared.states, chance);
    chances.push(Math.max(0, chance - chanceBelow));
    states.push(withoutPart(joint, below));
    chanceBelow = chance;
    below = joint;
  }
  return { chances, states };
}

/** Each combination of states is clamped in turn; all absent is what the others leave. */
function jointsOfStates(prepared: Prepared, causes: readonly number[], combinations: number): LevelJoints {
  let chance = 1;
  let rest = prepared.states;
  const chances: number[] = [];
  const states: Float64Array[] = [];
  for (let index = 1; index < combinations; index++) {
    const wanted = combination(prepared, causes, index);
    const clamped = prepared.whatIfFactors(causes.map((cause, i) => ({ cause, factors: Array.from({ length: stateCount(prepared.net, cause) }, (_, k) => (k === wanted[i] ? 1 : 0)) })));
    const share = chanceOf(prepared, clamped);
    const joint = scaled(clamped.states, share);
    chance = Math.max(0, chance - share);
    rest = withoutPart(rest, joint);
    chances.push(share);
    states.push(joint);
  }
  return { chances: [chance, ...chances], states: [rest, ...states] };
}

/** A gate tied to others is pinned to each level in turn; that changes the plan. */
function jointsOfTiedGate(prepared: Prepared, check: Check): LevelJoints {
  const gate = gateOf(prepared.net, check.on);
  const replaces = check.on.kind === 'gate' ? check.on.gate : undefined;
  const pinned = (gate?.weights ?? []).map((weight, pin) => {
    const seen = gate && prepared.whatIfGate({ ...gate, weights: gate.weights.map((_, level) => (level === pin ? weight : 0)) }, replaces);
    if (seen === undefined || 'kind' in seen) throw new Error(`inference: look-ahead at level ${pin} needs ${seen?.cost.units ?? 0} units, expected at most the limit given to prepare`);
    return seen;
  });
  const chances = pinned.map((seen) => chanceOf(prepared, seen));
  return { chances, states: pinned.map((seen, level) => scaled(seen.states, chances[level] ?? 0)) };
}

function chanceOf(prepared: Prepared, { logEvidence }: Lookahead): number {
  return Math.exp(logEvidence - prepared.logEvidence);
}

function scaled(states: Float64Array, factor: number): Float64Array {
  const out = new Float64Array(states.length);
  for (let i = 0; i < out.length; i++) out[i] = (states[i] ?? 0) * factor;
  return out;
}

function withoutPart(whole: Float64Array, part: Float64Array): Float64Array {
  const out = new Float64Array(whole.length);
  for (let i = 0; i < out.length; i++) out[i] = Math.max(0, (whole[i] ?? 0) - (part[i] ?? 0));
  return out;
}
