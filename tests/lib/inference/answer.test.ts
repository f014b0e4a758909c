import { describe, expect, test } from 'vitest';
import { answer, withEvidence, type Answer, type AnswerOptions, type Gate, type Net } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { FOUR_CAUSES, normalDensity, PRIORS, withFindings } from '../../independent/inference/four-causes';
import { observed, range, seededNet } from '../../independent/inference/seeded-net';
import values from '../../independent/inference/values.json';

/** Values are exact fractions printed as doubles; the engine adds some hundred products. */
const ROUNDING = 1e-12;

const known = values as unknown as Readonly<Record<string, number>>;

function answered(net: Net, options?: AnswerOptions): Answer {
  const found = answer(net, options);
  if (found.kind !== 'answer') throw new Error(`got ${found.kind}, expected an answer`);
  return found;
}

const present = (found: Answer, cause: number) => 1 - at(at(found.states, cause), 0);

/** Every value of `values.json` under this tag that the answer does not give. */
function misses(tag: string, found: Answer): string[] {
  const list: string[] = [];
  let compared = 0;
  const compare = (key: string, got: number) => {
    const value = known[key];
    if (value === undefined) return;
    compared++;
    if (!(Math.abs(got - value) <= ROUNDING * Math.max(1, value))) list.push(`${key}: got ${got}, expected ${value}`);
  };
  compare(`${tag}.P(e)`, Math.exp(found.logEvidence));
  found.states.forEach((row, cause) => compare(`${tag}.d${cause}`, 1 - at(row, 0)));
  if (compared === 0) list.push(`${tag}: no value in values.json`);
  return list;
}

describe('published networks', () => {
  test('the fever table: inhibitors multiply', () => {
    const bits = ['000', '001', '010', '011', '100', '101', '110', '111'];
    const missed = bits.filter((pattern) => {
      const net: Net = {
        causes: Array.from(pattern, (bit) => ({ weights: bit === '1' ? [0, 1] : [1, 0] })),
        gates: [{ leak: [1, 0], links: [0.6, 0.2, 0.1].map((inhibitor, cause) => ({ cause, contributes: [[inhibitor, 1 - inhibitor]] })), weights: [0, 1] }],
      };
      const found = answer(net);
      const fever = found.kind === 'answer' ? Math.exp(found.logEvidence) : 0;
      return !(Math.abs(fever - (known[`noisyor.P(fever|cold,flu,malaria=${pattern})`] ?? NaN)) <= ROUNDING);
    });
    expect(missed).toEqual([]);
  });

  test('the alarm network: a free table becomes a three-state contribution, callers become fed gates', () => {
    // P(alarm | b, e) is no noisy-OR (.95 with both, .94 and .29 alone), so the alarm itself is a cause of two states
    // that a joint factor ties to its parents; each caller is a gate with a link from it.
    const caller = (yes: number, no: number, seen: boolean): Gate => {
      const link = 1 - (1 - yes) / (1 - no);
      return { leak: [1 - no, no], links: [{ cause: 2, contributes: [[1 - link, link]] }], weights: seen ? [0, 1] : [1, 0] };
    };
    const alarm = [0.001, 0.29, 0.94, 0.95];
    const base: Net = {
      causes: [{ weights: [0.999, 0.001] }, { weights: [0.998, 0.002] }, { weights: [1, 1] }],
      gates: [],
      joints: [{ causes: [0, 1, 2], table: alarm.flatMap((p) => [1 - p, p]) }],
    };
    const both = answered({ ...base, gates: [caller(0.9, 0.05, true), caller(0.7, 0.01, true)] });
    expect(Math.exp(both.logEvidence)).toBeCloseTo(known['alarm.P(j,m)'] ?? NaN, 14);
    expect([0, 1, 2].map((cause) => present(both, cause))).toEqual(['B', 'E', 'A'].map((v) => expect.closeTo(known[`alarm.P(${v}|j,m)`] ?? NaN, 12) as number));
    expect(present(both, 0)).toBeCloseTo(0.284, 3); // as the book prints it
    const one = answered({ ...base, gates: [caller(0.9, 0.05, true), caller(0.7, 0.01, false)] });
    expect(present(one, 0)).toBeCloseTo(known['alarm.P(B|j,not m)'] ?? NaN, 13);
    const rung = withEvidence(base, [{ kind: 'cause', cause: 2, factors: [0, 1] }]);
    expect(present(answered(rung), 0)).toBeCloseTo(known['alarm.P(B|a)'] ?? NaN, 12);
    const explained = answered(withEvidence(rung, [{ kind: 'cause', cause: 1, factors: [0, 1] }]));
    expect(present(explained, 0)).toBeCloseTo(known['alarm.P(B|a,e)'] ?? NaN, 13);
  });
});

describe('four causes, four findings', () => {
  test('every pattern of findings has its posterior and evidence', () => {
    const patterns = ['+???', '++??', '++?+', '++-+', '++++', '----'];
    expect(patterns.flatMap((pattern) => misses(`bn2o4[${pattern}]`, answered(withFindings(pattern))))).toEqual([]);
  });

  test('a measurement is a likelihood on one cause, or on any of several', () => {
    const reading = [normalDensity(82, 100, 10), normalDensity(82, 70, 10)];
    const one = withEvidence(withFindings('++-+'), [{ kind: 'cause', cause: 0, factors: reading }]);
    const anyOf: Gate = { leak: [1, 0], links: [0, 3].map((cause) => ({ cause, contributes: [[0, 1]] })), weights: reading };
    const net = withFindings('++-+');
    expect([...misses('num1[++-+,y=82]', answered(one)), ...misses('numAny[++-+,y=82]', answered({ ...net, gates: [...net.gates, anyOf] }))]).toEqual([]);
  });

  test('a graded finding costs one bit and matches each grade', () => {
    const graded = (level: number): Gate => ({
      leak: [0.95, 0.04, 0.01],
      links: [{ cause: 0, contributes: [[0.2, 0.5, 0.3]] }, { cause: 2, contributes: [[0.5, 0.4, 0.1]] }],
      weights: [0, 1, 2].map((l) => (l === level ? 1 : 0)),
    });
    const net = withFindings('+???');
    const found = [0, 1, 2].map((level) => answered({ ...net, gates: [...net.gates, graded(level)] }));
    expect(found.flatMap((answerOfLevel, level) => misses(`max[f0=+,g=${level}]`, answerOfLevel))).toEqual([]);
    expect(found.map(({ cost }) => cost.width)).toEqual([2, 4, 4]);
  });

  test('an inhibiting cause works against a finding that is seen and one that is not', () => {
    const inhibited = (mark: string): Net => {
      const net = withFindings(`+${mark}??`);
      return { ...net, gates: net.gates.map((gate, f) => (f === 1 ? { ...gate, inhibitedBy: [{ cause: 2, strength: 0.6 }] } : gate)) };
    };
    expect([...misses('inhibCause[f0+,f1=0]', answered(inhibited('-'))), ...misses('inhibCause[f0+,f1=1]', answered(inhibited('+')))]).toEqual([]);
  });

  test('a context multiplies prior odds, and an unknown one is a mixture weighed by its evidence', () => {
    const net = withFindings('++-+');
    const inContext = withEvidence(net, [{ kind: 'cause', cause: 2, factors: [1, 4] }, { kind: 'cause', cause: 0, factors: [1, 0.5] }]);
    const normalised: Net = { ...inContext, causes: inContext.causes.map(({ weights }) => ({ weights: weights.map((w) => w / weights.reduce((a, b) => a + b, 0)) })) };
    const [with_, without] = [answered(normalised), answered(net)];
    expect(misses('ctx[++-+]', with_)).toEqual([]);
    const share = (0.3 * Math.exp(with_.logEvidence)) / (0.3 * Math.exp(with_.logEvidence) + 0.7 * Math.exp(without.logEvidence));
    expect(share).toBeCloseTo(known['ctx.P(k|e)'] ?? NaN, 12);
    const mixed = PRIORS.map((_, cause) => share * present(with_, cause) + (1 - share) * present(without, cause));
    expect(mixed).toEqual(PRIORS.map((_, cause) => expect.closeTo(known[`ctxUnknown[++-+].d${cause}`] ?? NaN, 12) as number));
  });
});

describe('two rounds with a repair between', () => {
  // Cause 0 was treated with success .9. State 1: present and fixed, state 2: present still.
  const treated: Net = { ...FOUR_CAUSES, causes: FOUR_CAUSES.causes.map((cause, i) => (i === 0 ? { weights: [0.9, 0.1 * 0.9, 0.1 * 0.1] } : cause)) };
  const bothStates = (gate: Gate): Gate => ({ ...gate, links: gate.links.map((link) => (link.cause === 0 ? { ...link, contributes: [at(link.contributes, 0), at(link.contributes, 0)] } : link)) });
  const onlyStill = (gate: Gate): Gate => ({ ...gate, links: gate.links.map((link) => (link.cause === 0 ? { ...link, contributes: [[1, 0], at(link.contributes, 0)] } : link)) });
  const firstRound = treated.gates.map(bothStates);
  const seen = (gate: Gate): Gate => ({ ...gate, weights: [0, 1] });
  const notSeen = (gate: Gate): Gate => ({ ...gate, weights: [1, 0] });
  const [f0, f1, f2, f3] = [0, 1, 2, 3].map((f) => at(firstRound, f)) as [Gate, Gate, Gate, Gate];
  const others = [seen(f1), notSeen(f2), seen(f3)];
  const stillThere = (found: Answer) => [at(at(found.states, 0), 2), present(found, 1), present(found, 2), present(found, 3)];
  const expected = (key: string) => [0, 1, 2, 3].map((cause) => expect.closeTo(known[`${key}.d${cause}`] ?? NaN, 12) as number);
  const evidence = (gates: readonly Gate[]) => Math.exp(answered({ ...treated, gates }).logEvidence);

  test('findings drawn anew: the second look is a gate of its own', () => {
    const again = onlyStill(f0);
    expect(stillThere(answered({ ...treated, gates: [seen(f0), ...others, notSeen(again)] }))).toEqual(expected('round2[f0 after=0]'));
    expect(stillThere(answered({ ...treated, gates: [seen(f0), ...others, seen(again)] }))).toEqual(expected('round2[f0 after=1]'));
    const share = evidence([seen(f0), ...others, seen(again)]) / evidence([seen(f0), ...others]);
    expect(share).toBeCloseTo(known["round2[f0 after=1].P(f0'|round1)"] ?? NaN, 12);
  });

  test('persistent mechanisms: what is still on is the same gate restricted to what remains', () => {
    expect(stillThere(answered({ ...treated, gates: [seen(onlyStill(f0)), ...others] }))).toEqual(expected('persist[rho=0.0, f0 after=1]'));
    // Gone: everything that remains is silent, and what was fixed had made it. A gate of the fixed state alone, seen.
    const fixedAlone: Gate = { leak: [1, 0], links: [{ cause: 0, contributes: [at(at(f0.links, 0).contributes, 0), [1, 0]] }], weights: [0, 1] };
    expect(stillThere(answered({ ...treated, gates: [fixedAlone, notSeen(onlyStill(f0)), ...others] }))).toEqual(expected('persist[rho=0.0, f0 after=0]'));
    const share = evidence([seen(onlyStill(f0)), ...others]) / evidence([seen(f0), ...others]);
    expect(share).toBeCloseTo(known["persist[rho=0.0, f0 after=1].P(f0'|round1)"] ?? NaN, 12);
  });

  test('a remedy in one round, a finding gone in the next', () => {
    expect(stillThere(answered({ ...treated, gates: [seen(f0), seen(f1), notSeen(onlyStill(f1))] }))).toEqual(expected('round2[f1 gone after d0 remedy]'));
  });
});

describe('large nets', () => {
  test('12 causes and 10 findings: evidence and all posteriors', () => {
    const net = observed(seededNet(12, 10, 2, 5, 7), [0, 1, 3, 4, 6, 7], [2, 5]);
    expect(misses('seed7 12x10', answered(net))).toEqual([]);
  });

  test('70 causes and 80 findings: evidence to 20 positives, posteriors to 12', () => {
    const net = seededNet(70, 80, 4, 14, 11);
    const findings: string[] = [];
    for (const m of [5, 8, 10, 12, 15, 18, 20]) {
      const value = (values as unknown as Record<string, { Z: number; post?: number[] }>)[`seed11.m${m}`];
      if (value === undefined) throw new Error(`no value for ${m} positives`);
      const found = answered(observed(net, range(0, m), range(60, 75)));
      const relative = Math.exp(found.logEvidence) / value.Z - 1;
      // The sheet gives 15 digits up to m = 12, and 11 to 12 beyond.
      if (!(Math.abs(relative) < (m <= 12 ? 1e-12 : 3e-11))) findings.push(`${m} positives: evidence off by ${relative}`);
      value.post?.forEach((p, cause) => {
        if (!(Math.abs(present(found, cause) - p) < ROUNDING)) findings.push(`${m} positives: cause ${cause} is ${present(found, cause)}, expected ${p}`);
      });
      const outside = found.states.flat().filter((p) => !(p >= 0 && p <= 1));
      if (outside.length > 0) findings.push(`${m} positives: ${outside.join(', ')} is no probability`);
    }
    expect(findings).toEqual([]);
  });

  test('20 rare positives in one frontier: evidence far below the smallest double, posteriors still right', () => {
    // Two causes behind every finding. By symmetry P(e) = Σ over the four combinations, written out in logs.
    const [leak, link, prior] = [1e-18, 1e-17, 1e-3];
    const net: Net = {
      causes: [0, 1].map(() => ({ weights: [1 - prior, prior] })),
      gates: Array.from({ length: 20 }, () => ({ leak: [1 - leak, leak], links: [0, 1].map((cause) => ({ cause, contributes: [[1 - link, link]] })), weights: [0, 1] })),
    };
    // At this size 1 − (1 − leak)(1 − link)^n is leak + n · link to 17 digits.
    const logOf = (n: number) => n * Math.log(prior) + (2 - n) * Math.log(1 - prior) + 20 * Math.log(leak + n * link) + (n === 1 ? Math.log(2) : 0);
    const logs = [0, 1, 2].map(logOf);
    const total = 20 * Math.log(leak) + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - 20 * Math.log(leak)), 0));
    const found = answered(net, { limitUnits: 1e9 });
    expect(found.logEvidence).toBeLessThan(Math.log(1e-300));
    expect(found.logEvidence).toBeCloseTo(total, 9);
    expect(present(found, 0)).toBeCloseTo(Math.exp(at(logs, 2) - total) + Math.exp(at(logs, 1) - total) / 2, 12);
  });

  test('too dense: an answer is refused with its cost and with what would make it cheaper', () => {
    const net = observed(seededNet(70, 80, 19, 19, 5), range(0, 25));
    const refused = answer(net, { limitUnits: 1e5 });
    if (refused.kind !== 'too-dense') throw new Error(`got ${refused.kind}`);
    expect(refused.cost.units).toBeGreaterThan(1e5);
    expect([...refused.confirmFirst].sort((a, b) => a - b)).toEqual(range(0, 25));
    const units = (without: number) => {
      const kept = range(0, 25).filter((g) => g !== without);
      const found = answer(observed(seededNet(70, 80, 19, 19, 5), kept), { limitUnits: 1 });
      return found.kind === 'too-dense' ? found.cost.units : NaN;
    };
    expect(units(at(refused.confirmFirst, 0))).toBeLessThanOrEqual(units(at(refused.confirmFirst, 24)));
  });

  test('evidence that contradicts the net is called impossible', () => {
    const net: Net = { causes: [{ weights: [0.5, 0.5] }], gates: [{ leak: [1, 0], links: [{ cause: 0, contributes: [[0, 1]] }], weights: [0, 1] }, { leak: [1, 0], links: [{ cause: 0, contributes: [[0, 1]] }], weights: [1, 0] }] };
    expect(answer(net)).toEqual({ kind: 'impossible' });
  });
});

describe('a malformed net is a mistake of ours and throws', () => {
  const good: Gate = at(withFindings('+???').gates, 0);
  const cases: readonly (readonly [string, Net, RegExp])[] = [
    ['a link to a cause that is not there', { ...FOUR_CAUSES, gates: [{ ...good, links: [{ cause: 9, contributes: [[0.5, 0.5]] }] }] }, /no cause 9/],
    ['a table that does not sum to 1', { ...FOUR_CAUSES, gates: [{ ...good, leak: [0.5, 0.4] }] }, /sum of 0.9/],
    ['a table of the wrong length', { ...FOUR_CAUSES, gates: [{ ...good, leak: [0.5, 0.25, 0.25] }] }, /3 levels, expected 2/],
    ['a negative weight', { ...FOUR_CAUSES, causes: [{ weights: [1, -0.1] }] }, /-0.1/],
    ['a feed in a circle', { ...FOUR_CAUSES, gates: [{ ...good, feeds: [{ gate: 0, contributes: [[0.5, 0.5]] }] }] }, /without a cycle/],
    ['a joint factor of the wrong size', { ...FOUR_CAUSES, joints: [{ causes: [0, 1], table: [1, 2, 3] }] }, /3 numbers, expected 4/],
  ];
  test.each(cases)('%s', (_name, net, message) => {
    expect(() => answer(net)).toThrow(message);
  });
});
