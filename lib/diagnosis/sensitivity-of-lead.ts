import type { Lookahead, Net } from '../inference';
import type { CaseNet } from './build-net';
import type { Diagnosis } from './diagnose';
import { havingAHand, isAnythingFound } from './having-a-hand';

/** One figure of the knowledge base. */
export type Figure =
  | { readonly kind: 'how-often'; readonly cause: string }
  | { readonly kind: 'without-cause'; readonly about: string }
  | { readonly kind: 'link'; readonly cause: string; readonly about: string }
  | { readonly kind: 'follows'; readonly from: string; readonly about: string };

export interface FigureWeight {
  readonly figure: Figure;
  /** Change of the log odds of the leader against the second per change of the figure's own log odds. */
  readonly slope: number;
}

export interface SensitivityOfLead {
  readonly lead: string;
  readonly second: string;
  /** Natural log of the chance of the leader over that of the second. */
  readonly margin: number;
  /** Figures, the weightiest first. */
  readonly figures: readonly FigureWeight[];
}

/** Causes less likely than this are left out: a figure of theirs moves the lead by about as little. */
const TOO_UNLIKELY = 0.005;

/**
 * On which figures the lead rests: for each, d ln(leader : second) / d ln(odds of the figure), at its present value.
 *
 * P(cause had a hand in it, everything told) is linear in every single chance, so a posterior is a linear fraction of it
 * (diagnosis.md 2.5) and the slope follows from two runs without any step error: the present one and one with the chance
 * halved. 0.5 means that doubling the odds of the figure raises leader : second by a factor of 1.41. Medians and spreads of
 * readings are not figures here, as nothing is linear in them. Undefined with less than two causes that had a hand in it.
 * Worked: A and B both show what was seen through 0.75 and 0.5: the slope of A's link is 1 − 0.75 = 0.25, of B's −0.5.
 */
export function sensitivityOfLead(diagnosis: Diagnosis): SensitivityOfLead | undefined {
  const { net, prepared, causes } = diagnosis;
  const [lead, second] = causes;
  if (!lead || !second || !(second.probability > 0)) return undefined;
  const isFound = isAnythingFound(net);
  const places = [lead, second].map(({ id }) => net.causes.indexOf(id));
  const joint = (seen: Lookahead): number[] => {
    const acting = havingAHand(seen, prepared.firstState, isFound);
    return places.map((place) => (acting[place] ?? 0) * Math.exp(seen.logEvidence - prepared.logEvidence));
  };
  const [now1 = 0, now2 = 0] = joint(prepared);
  const likely = new Set(causes.filter((cause) => cause.present >= TOO_UNLIKELY).map((cause) => cause.id));
  const figures = halvings(net, likely).flatMap(({ figure, chance, halved }): FigureWeight[] => {
    const seen = prepared.whatIfNet(halved, true);
    if ('kind' in seen) return [];
    const [half1 = 0, half2 = 0] = joint(seen);
    return [{ figure, slope: 2 * (1 - chance) * (half2 / now2 - half1 / now1) }];
  });
  return { lead: lead.id, second: second.id, margin: Math.log(now1 / now2), figures: figures.sort((a, b) => Math.abs(b.slope) - Math.abs(a.slope)) };
}

interface Halving {
  readonly figure: Figure;
  readonly chance: number;
  /** The net with this chance halved. */
  readonly halved: Net;
}

function halvings({ net, causes, gates }: CaseNet, likely: ReadonlySet<string>): Halving[] {
  const found: Halving[] = [];
  net.causes.forEach(({ weights }, place) => {
    const cause = causes[place] ?? '';
    if (!likely.has(cause)) return;
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const chance = 1 - (weights[0] ?? 0) / total;
    const fewer = weights.map((weight, state) => (state === 0 ? total - ((total - weight) / 2) : weight / 2));
    found.push({ figure: { kind: 'how-often', cause }, chance, halved: { ...net, causes: net.causes.map((each, other) => (other === place ? { weights: fewer } : each)) } });
  });
  net.gates.forEach((gate, place) => {
    const about = gates[place]?.about ?? '';
    const add = (figure: Figure, table: readonly number[] | undefined, changed: Partial<Net['gates'][number]>): void => {
      const chance = 1 - (table?.[0] ?? 1);
      if (chance > 0) found.push({ figure, chance, halved: { ...net, gates: net.gates.map((each, other) => (other === place ? { ...each, ...changed } : each)) } });
    };
    add({ kind: 'without-cause', about }, gate.leak, { leak: halvedTable(gate.leak) });
    for (const link of gate.links) {
      const cause = causes[link.cause] ?? '';
      if (likely.has(cause)) add({ kind: 'link', cause, about }, link.contributes[link.contributes.length - 1], { links: gate.links.map((each) => (each === link ? { ...each, contributes: each.contributes.map(halvedTable) } : each)) });
    }
    for (const feed of gate.feeds ?? []) add({ kind: 'follows', from: gates[feed.gate]?.about ?? '', about }, feed.contributes[0], { feeds: (gate.feeds ?? []).map((each) => (each === feed ? { ...each, contributes: each.contributes.map(halvedTable) } : each)) });
  });
  return found;
}

/** Everything above level 0 happens half as often. */
function halvedTable(table: readonly number[]): number[] {
  return table.map((share, level) => (level === 0 ? 1 - (1 - share) / 2 : share / 2));
}
