import { mulberry32, type Prepared } from '../inference';
import type { CaseNet } from './build-net';

/** One way it may be: which causes are there now, and which of them made the print fail. Causes by number, as in the case's net. */
export interface Scenario {
  readonly present: readonly number[];
  /** Causes of `present` that something seen came from; empty when nothing listed is behind it. */
  readonly behind: readonly number[];
  /**
   * Per symptom whose last word is "seen", in the order of `Drawn.symptoms`: what keeps it there now, causes and `UNLISTED`. Empty: gone,
   * as what set it off was cured since it was looked at.
   */
  readonly bySymptom: readonly (readonly number[])[];
}

/** Stands among causes for whatever is not listed. */
export const UNLISTED = -1;

export interface Drawn {
  /** Symptoms that are seen now. A detail of one (`detailOf`) is not among them: it is gone when that one is. */
  readonly symptoms: readonly string[];
  readonly scenarios: readonly Scenario[];
  /** How many symptoms were ever seen in the case, details left out: what a share that is left is a share of. */
  readonly ever: number;
}

/**
 * `count` equally likely scenarios from the exact joint posterior of a case, the same ones for the same `seed`.
 *
 * The causes are drawn first; then, for each symptom that is seen now, which of the ways in which it can have come about
 * did: its listed causes, a symptom before it, or nothing listed. A chance read off n scenarios is off by about
 * √(chance · (1 − chance) / n). Two symptoms that may both follow from an unlooked-at third draw it anew each.
 * `prepared` is the finished run of `net`. Causes that no finding ties to this case are never drawn.
 * Worked: prior 0.1, one symptom seen through a link of 0.8, leak 0.02: the cause is behind it in 0.81301 of them.
 */
export function drawScenarios(net: CaseNet, prepared: Prepared, count: number, seed: number): Drawn {
  const { firstState } = prepared;
  const owner = ownersOf(firstState);
  const random = mulberry32(seed ^ 0x5bd1e995);
  const culprits = new Culprits(net, random);
  const scenarios = prepared.presentDraws(count, seed, []).map((positions): Scenario => {
    const states = new Map(positions.map((position) => { const cause = owner[position] ?? 0; return [cause, position - (firstState[cause] ?? 0)] as const; }));
    const present = [...states].flatMap(([cause, state]) => (isAtWork(firstState, cause, state) ? [cause] : []));
    return { present, ...culprits.of(states, new Set(present)) };
  });
  return { symptoms: culprits.symptoms, scenarios, ever: culprits.ever };
}

function ownersOf(firstState: Int32Array): Int32Array {
  const owner = new Int32Array(firstState[firstState.length - 1] ?? 0);
  for (let cause = 0; cause + 1 < firstState.length; cause += 1) owner.fill(cause, firstState[cause] ?? 0, firstState[cause + 1] ?? 0);
  return owner;
}

function isAtWork(firstState: Int32Array, cause: number, state: number): boolean {
  return (firstState[cause] ?? 0) + state === (firstState[cause + 1] ?? 0) - 1;
}

/** One thing that can have set off a symptom: its chance, and the causes that are then behind it. */
interface Way {
  readonly chance: number;
  readonly behind: readonly number[] | (() => readonly number[]);
}

const NOTHING_LISTED: readonly number[] = [UNLISTED];
const NOTHING: readonly number[] = [];
/** A symptom that is itself told as seen stands among causes as this number and below, until what is behind it is put in. */
const EARLIER = -2;

/** Draws who was behind the symptoms that are seen now, given which causes are there. */
class Culprits {
  /** Gates of symptoms whose last word is "seen", details left out. */
  readonly #seen: readonly number[];
  readonly ever: number;
  /** Causes tied to anything that was found; they count where no symptom is told as seen. */
  readonly #tied: ReadonlySet<number>;
  /** Per gate and cause: chance, in each of its states, that it set the gate off. */
  readonly #linksOf: readonly ReadonlyMap<number, readonly number[]>[];

  constructor(private readonly net: CaseNet, private readonly random: () => number) {
    const lastWord = (gate: number): boolean | undefined => { const item = net.gates[gate]?.items.at(-1); return item?.kind === 'symptom' ? item.seen : undefined; };
    const numbers = [...net.gates.keys()];
    this.#seen = numbers.filter((gate) => lastWord(gate) === true && !isDetail(net, gate));
    this.ever = new Set(numbers.flatMap((gate) => (isDetail(net, gate) ? [] : (net.gates[gate]?.items ?? []).flatMap((item) => (item.kind === 'symptom' && item.seen ? [item.about] : []))))).size;
    this.#tied = new Set(net.net.gates.flatMap((gate) => gate.links.map((link) => link.cause)));
    this.#linksOf = net.net.gates.map((gate) => new Map(gate.links.map((link) => [link.cause, link.contributes.map((table) => shareOn(table, gate.weights))])));
  }

  get symptoms(): readonly string[] {
    return this.#seen.map((gate) => this.net.gates[gate]?.items[0]?.about ?? '');
  }

  of(states: ReadonlyMap<number, number>, present: ReadonlySet<number>): Pick<Scenario, 'behind' | 'bySymptom'> {
    if (this.#seen.length === 0) return { behind: [...present].filter((cause) => this.#tied.has(cause)), bySymptom: [] };
    const drawn = new Map(this.#seen.map((gate) => [gate, this.#oneOrMore(this.#waysTo(gate, states, present))]));
    const named = (culprit: number): readonly number[] => (culprit <= EARLIER ? (drawn.get(EARLIER - culprit) ?? []).flatMap(named) : [culprit]);
    const bySymptom = [...drawn.values()].map((culprits) => [...new Set(culprits.flatMap(named))]);
    const behind = [...new Set(bySymptom.flat())].filter((cause) => cause !== UNLISTED).sort((a, b) => a - b);
    return { behind, bySymptom };
  }

  #waysTo(gate: number, states: ReadonlyMap<number, number>, present: ReadonlySet<number>): Way[] {
    const table = this.net.net.gates[gate];
    if (table === undefined) return [];
    const ways: Way[] = [{ chance: shareOn(table.leak, table.weights), behind: NOTHING_LISTED }];
    const links = this.#linksOf[gate];
    for (const [cause, state] of states) {
      const chance = links?.get(cause)?.[state - 1];
      // A cause that was cured since keeps nothing there.
      if (chance !== undefined) ways.push({ chance, behind: present.has(cause) ? [cause] : NOTHING });
    }
    for (const feed of table.feeds ?? []) {
      const passedOn = shareOn(feed.contributes.at(-1) ?? [1], table.weights);
      const then = this.#wordThen(feed.gate, gate);
      if (then === false) continue;
      // It was there when this one was seen, and is gone by now.
      if (then === true && !this.#seen.includes(feed.gate)) ways.push({ chance: passedOn, behind: NOTHING });
      else if (this.#seen.includes(feed.gate)) ways.push({ chance: passedOn, behind: [EARLIER - feed.gate] });
      else {
        const before = this.#waysTo(feed.gate, states, present);
        ways.push({ chance: passedOn * (1 - before.reduce((none, way) => none * (1 - way.chance), 1)), behind: this.#isGone(feed.gate) ? NOTHING : () => this.#oneOrMore(before) });
      }
    }
    return ways;
  }

  #isGone(gate: number): boolean {
    const item = this.net.gates[gate]?.items.at(-1);
    return item?.kind === 'symptom' && !item.seen;
  }

  /** What was last told of the symptom of one gate when that of another was last told; undefined where nothing was. */
  #wordThen(gate: number, other: number): boolean | undefined {
    const until = this.net.gates[other]?.items.at(-1)?.round ?? Infinity;
    const item = this.net.gates[gate]?.items.filter((each) => each.round <= until).at(-1);
    return item?.kind === 'symptom' ? item.seen : undefined;
  }

  /** Draws which of these independent ways came about, given that at least one did. */
  #oneOrMore(ways: readonly Way[]): number[] {
    const noneFrom = ways.map(() => 1);
    for (let way = ways.length - 1; way >= 0; way -= 1) noneFrom[way] = (noneFrom[way + 1] ?? 1) * (1 - (ways[way]?.chance ?? 0));
    const behind: number[] = [];
    let isSetOff = false;
    ways.forEach((way, index) => {
      const chance = isSetOff ? way.chance : way.chance / Math.max(1 - (noneFrom[index] ?? 1), 1e-300);
      if (this.random() >= chance) return;
      isSetOff = true;
      behind.push(...(typeof way.behind === 'function' ? way.behind() : way.behind));
    });
    return behind;
  }
}

/** A detail says how another symptom is, and counts only while that one is seen. */
function isDetail({ gates, builtFrom }: CaseNet, gate: number): boolean {
  return builtFrom.knowledge.symptoms[gates[gate]?.items[0]?.about ?? '']?.detailOf !== undefined;
}

/** Share of a table of levels that lies above 0 and agrees with what was told of the gate. */
function shareOn(table: readonly number[], weights: readonly number[]): number {
  return table.reduce((sum, share, level) => (level > 0 && (weights[level] ?? 0) > 0 ? sum + share : sum), 0);
}
