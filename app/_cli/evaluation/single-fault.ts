import { buildNet, evidenceOf } from '@/lib/diagnosis';
import { answer, type Net } from '@/lib/inference';
import type { Knowledge } from '@/lib/knowledge';
import { rankedBy, type Ranker } from './ranker';

/**
 * Classic Bayes with one fault: exactly one cause is at work, so chances sum to 1. Same knowledge, same findings, same
 * circumstances; only the assumption differs.
 */
export function singleFaultRanker(knowledge: Knowledge): Ranker {
  return {
    name: 'single-fault Bayes',
    rank: (file) => {
      const { net, causes } = buildNet(file, evidenceOf(file, knowledge).items, knowledge);
      const logWeights = causes.map((_, cause) => logWeightAlone(net, cause));
      const largest = Math.max(...logWeights);
      const weights = logWeights.map((weight) => Math.exp(weight - largest));
      const sum = weights.reduce((total, weight) => total + weight, 0);
      return rankedBy(new Map(causes.map((id, cause) => [id, (weights[cause] ?? 0) / sum])));
    },
  };
}

/** Log of (prior odds · chance of all findings) with this cause at work and no other. */
function logWeightAlone(net: Net, cause: number): number {
  const weights = net.causes[cause]?.weights ?? [1];
  const present = weights[weights.length - 1] ?? 0;
  const states = weights.map((_, state) => (state === weights.length - 1 ? 1 : 0));
  const gates = net.gates.map((gate) => ({ ...gate, links: gate.links.filter((link) => link.cause === cause).map((link) => ({ ...link, cause: 0 })) }));
  const outcome = answer({ causes: [{ weights: states }], gates });
  if (outcome.kind !== 'answer') throw new Error(`single fault: got ${outcome.kind}, expected an answer for one cause alone`);
  return outcome.logEvidence + Math.log(present / (weights[0] ?? 1));
}
