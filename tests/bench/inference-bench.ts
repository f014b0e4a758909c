import { createRequire } from 'node:module';
import type { INetwork } from 'bayesjs/dist/types';
import { answer, prepare, rankBands, rankChecks, scenariosOf, type Check, type Net } from '@/lib/inference';
import { asBayesNetwork, asGiven } from '../independent/inference/as-bayes-network';
import { at } from '../independent/inference/at';
import { observed, range, seededNet, simulatedCase } from '../independent/inference/seeded-net';
import { alternatingSum } from './inclusion-exclusion';

/** The package is CommonJS without a default export, which the bench command's loader cannot import by name. */
const { infer } = createRequire(import.meta.url)('bayesjs') as { readonly infer: (network: INetwork, nodes: Record<string, string>, given: Record<string, string>) => number };

export interface Row {
  readonly name: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  /** Median to be reached, ms; Infinity for a row that is a yardstick only. */
  readonly target: number;
  /** What else was found. */
  readonly note: string;
}

/** Cases per row; each counts with the best of `REPEATS` runs, which keeps other work on the machine out. */
const CASES = 40;
const REPEATS = 5;

/** Times of the inference core on seeded nets, and two yardsticks. Takes about two minutes. */
export function inferenceBench(): Promise<Row[]> {
  const base = seededNet(70, 80, 4, 14, 11);
  const large = seededNet(600, 4000, 5, 15, 3);
  const rows = [
    ...[5, 10, 12, 15].map((positives) => wholeAnswer('70 causes, 80 findings', base, positives, positives <= 10 ? 2 : 8)),
    ...[10, 20].map((positives) => wholeAnswer('600 causes, 4000 findings', large, positives, 10)),
    ...[5, 10, 15, 20].map((positives) => posteriors(base, positives)),
    scenarios(base),
    bands(base),
    ...[10, 12, 15].map((positives) => againstAlternatingSum(base, positives)),
    ...againstJunctionTree(),
  ];
  return Promise.resolve(rows);
}

function wholeAnswer(name: string, net: Net, positives: number, target: number): Row {
  const cases = simulatedCases(net, positives).map((observation) => ({ observation, checks: openChecks(observation) }));
  const run = ({ observation, checks }: { observation: Net; checks: Check[] }) => {
    const found = prepare(observation);
    if (found.kind === 'prepared') rankChecks(found.prepared, checks);
  };
  return timed(`${name}, ${positives} positives: posteriors and 60 checks ranked`, target, cases, run, positives === 15 ? 'p95 target 16 ms' : '');
}

function posteriors(net: Net, positives: number): Row {
  const cases = simulatedCases(net, positives);
  const widths = cases.map((observation) => {
    const found = prepare(observation);
    return found.kind === 'prepared' ? Math.log2(found.prepared.cost.width) : NaN;
  });
  const spread = `width 2^${at([...widths].sort((a, b) => a - b), Math.floor(widths.length / 2))}, at most 2^${Math.max(...widths)}`;
  return timed(`70 causes, 80 findings, ${positives} positives: plan and posteriors`, Infinity, cases, (observation) => prepare(observation), spread);
}

function scenarios(net: Net): Row {
  const cases = simulatedCases(net, 10).map(prepared);
  return timed('400 joint draws merged into scenarios (the ranking takes 150), 10 positives', Infinity, cases, (handle) => scenariosOf(handle, 400, 1));
}

function bands(net: Net): Row {
  const cases = simulatedCases(net, 10).slice(0, 10).map(prepared);
  return timed('rank bands from 100 perturbed copies, 10 positives', Infinity, cases, (handle) => rankBands(handle));
}

function againstAlternatingSum(net: Net, positives: number): Row {
  const cases = simulatedCases(net, positives).slice(0, positives > 12 ? 4 : 10);
  const errors = cases.map((observation) => {
    const exact = answer(observation);
    const sum = alternatingSum(observation);
    return exact.kind === 'answer' ? Math.max(...exact.states.map((row, cause) => Math.abs(at(row, 1) - at(sum, cause)))) : NaN;
  });
  const ours = timed('', Infinity, cases, (observation) => answer(observation)).medianMs;
  const sum = timed(`alternating sum in doubles, ${positives} positives`, Infinity, cases, alternatingSum);
  return { ...sum, note: `${(sum.medianMs / ours).toFixed(0)} times as long; worst error of a posterior ${Math.max(...errors).toExponential(1)}` };
}

/** Causes and findings of ever larger seeded nets for the package; the last one tried is the first that takes it longer than `PATIENCE`. */
const SIZES: readonly (readonly [number, number])[] = [[12, 10], [16, 14], [20, 15], [24, 18], [28, 20]];
/** One posterior by the package may take so long, ms. */
const PATIENCE = 4000;

/** This engine beside the package on the largest net that it still does: all posteriors here, one posterior there. */
function againstJunctionTree(): Row[] {
  const rows: Row[] = [];
  for (const [causes, findings] of SIZES) {
    const size = `${causes} causes, ${findings} findings`;
    const net = observed(seededNet(causes, findings, 2, 5, 7), range(0, findings - 4), range(findings - 4, findings));
    const ours = timed(`${size}: this engine, all posteriors`, Infinity, [net], (observation) => answer(observation));
    const exact = answer(net);
    const started = performance.now();
    const theirs = infer(asBayesNetwork(net), { c0: 'T' }, { ...asGiven(net) });
    const took = performance.now() - started;
    const gap = exact.kind === 'answer' ? Math.abs(at(at(exact.states, 0), 1) - theirs) : NaN;
    rows.push(ours, { name: `${size}: junction tree of bayesjs 0.6.5, one posterior`, medianMs: took, p95Ms: took, target: Infinity, note: `${Math.round(took / ours.medianMs)} times as long; differs by ${gap.toExponential(1)}${took > PATIENCE ? '; the largest that it does in reasonable time' : ''}` });
    if (took > PATIENCE) break;
  }
  return rows;
}

function simulatedCases(net: Net, positives: number): Net[] {
  return range(0, CASES).map((i) => simulatedCase(net, positives, 15, 100 + i));
}

/** 60 yes/no checks on findings nobody has looked at, costs 1 … 7. */
function openChecks(net: Net): Check[] {
  const open = range(0, net.gates.length).filter((g) => at(net.gates, g).weights[0] === at(net.gates, g).weights[1]);
  return range(0, 60).map((i): Check => ({ on: { kind: 'gate', gate: at(open, i % open.length) }, outcomes: [[1, 0], [0, 1]], cost: 1 + (i % 7) }));
}

function prepared(net: Net) {
  const found = prepare(net);
  if (found.kind !== 'prepared') throw new Error(found.kind);
  return found.prepared;
}

function timed<T>(name: string, target: number, cases: readonly T[], run: (input: T) => unknown, note = ''): Row {
  const best = cases.map(() => Infinity);
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    cases.forEach((input, i) => {
      const start = performance.now();
      run(input);
      best[i] = Math.min(at(best, i), performance.now() - start);
    });
  }
  best.sort((a, b) => a - b);
  return { name, medianMs: at(best, Math.floor(best.length / 2)), p95Ms: at(best, Math.min(best.length - 1, Math.floor(best.length * 0.95))), target, note };
}
