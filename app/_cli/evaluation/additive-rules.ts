import { Engine, type RuleProperties } from 'json-rules-engine';
import { evidenceOf, readingLikelihoods, type Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { rankedBy, type Ranked, type Ranker } from './ranker';

/** A link at least this strong is also worth a rule for its absence. */
const WORTH_MISSING = 0.5;

/**
 * Scoring by rules, as hand-made advisors do it: every finding that is there adds its link's chance as points to the
 * cause, every looked-at finding that is missing takes as many off where the link is strong, and the points start from
 * ten times the prior. A cause's chance is its share of all points above nought. The rules run in a general-purpose
 * engine (json-rules-engine); readings become facts "this cause explains it better than a healthy machine".
 */
export function additiveRulesRanker(knowledge: Knowledge): Ranker {
  const engine = new Engine(rulesOf(knowledge), { allowUndefinedFacts: true });
  return {
    name: 'additive rule scoring',
    rank: async (file) => {
      const facts = Object.fromEntries(evidenceOf(file, knowledge).items.flatMap((item) => factsOf(item, knowledge)));
      const { events } = await engine.run(facts);
      const points = new Map(Object.values(knowledge.causes).map((cause) => [cause.id, 10 * cause.prior]));
      for (const { params } of events) {
        const cause = String(params?.cause);
        points.set(cause, (points.get(cause) ?? 0) + Number(params?.points));
      }
      return shares(points);
    },
  };
}

function rulesOf(knowledge: Knowledge): RuleProperties[] {
  return Object.values(knowledge.causes).flatMap((cause) => [
    ...Object.entries(cause.shows).flatMap(([id, link]) => rulesForLink(cause.id, `symptom ${id}`, link.chance)),
    ...Object.entries(cause.yes).flatMap(([id, link]) => rulesForLink(cause.id, `check ${id}`, link.chance)),
    ...Object.entries(cause.reads).flatMap(([id, link]) => rulesForLink(cause.id, `reading ${id} ${cause.id}`, link.chance)),
  ]);
}

function rulesForLink(cause: string, fact: string, chance: number): RuleProperties[] {
  const rule = (value: boolean, points: number): RuleProperties => ({ conditions: { all: [{ fact, operator: 'equal', value }] }, event: { type: 'points', params: { cause, points } } });
  return [rule(true, chance), ...(chance >= WORTH_MISSING ? [rule(false, -chance)] : [])];
}

function factsOf(item: Evidence, knowledge: Knowledge): [string, boolean][] {
  switch (item.kind) {
    case 'symptom': return [[`symptom ${item.about}`, item.seen]];
    case 'answer': return [[`check ${item.about}`, item.yes]];
    case 'reading': {
      const check = knowledge.checks[item.about];
      const healthy = check?.otherwise;
      if (!check || !healthy) return [];
      return Object.entries(check.reads).map(([cause, model]) => {
        const [asHealthy = 0, asFaulty = 0] = readingLikelihoods(item.value, item.standardUncertainty, [healthy, model]);
        return [`reading ${item.about} ${cause}`, asFaulty > asHealthy];
      });
    }
    default: { const never: never = item; return never; }
  }
}

function shares(points: ReadonlyMap<string, number>): Ranked {
  const sum = [...points.values()].reduce((total, value) => total + Math.max(0, value), 0);
  // Ranked by the points themselves, so that causes below nought keep their order.
  const { ranking } = rankedBy(points);
  return { ranking, chances: new Map([...points].map(([id, value]) => [id, sum > 0 ? Math.max(0, value) / sum : 0])) };
}
