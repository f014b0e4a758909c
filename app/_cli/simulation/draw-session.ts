import { mulberry32 } from '@/lib/inference';
import { priorInCircumstances } from '@/lib/diagnosis';
import type { CaseFile } from '@/lib/cases';
import { MATERIALS, TOUCHED, type Knowledge, type KnownSymptom } from '@/lib/knowledge';

/** A failure as it truly is, drawn from the knowledge base, and what the person tells of it at first. */
export interface Session {
  readonly number: number;
  readonly facts: Pick<CaseFile, 'machine' | 'print'>;
  readonly causes: ReadonlySet<string>;
  /** Per symptom that is there: what set it off. It lasts as long as one of these does. */
  readonly setOff: ReadonlyMap<string, SetOff>;
  /** Symptoms that are told, seen or not seen, the complaint first. */
  readonly told: readonly string[];
}

export interface SetOff {
  readonly causes: readonly string[];
  readonly earlier: readonly string[];
  readonly byItself: boolean;
  /** The symptom that it is a detail of. */
  readonly detailOf: string | undefined;
}

/** Symptoms that are looked at beside the complaint. Solved cases tell 1.8 seen ones on average, and hardly any that are not there. */
const LOOKED_AT = 3;

/**
 * One session: facts of machine and print, causes by their chance in these circumstances, symptoms by leaks, links and
 * chains. Drawn anew until something that is seen has a listed cause behind it; that is the complaint. Beside it, a few
 * symptoms that share a cause with it are looked at and told as they are. The same seed and number give the same session.
 */
export function drawSession(knowledge: Knowledge, seed: number, number: number): Session {
  const random = mulberry32(Math.imul(seed, 1000003) + number);
  for (;;) {
    const facts = drawFacts(random);
    const causes = new Set(Object.values(knowledge.causes).filter((cause) => random() < priorInCircumstances(cause, facts)).map((cause) => cause.id));
    const setOff = drawSymptoms(knowledge, causes, random);
    const complaints = [...setOff].filter(([id, by]) => by.causes.length > 0 && knowledge.symptoms[id]?.detailOf === undefined).map(([id]) => id);
    const complaint = complaints[Math.floor(random() * complaints.length)];
    if (complaint !== undefined) return { number, facts, causes, setOff, told: [complaint, ...shuffled(lookalikes(complaint, knowledge), random).slice(0, LOOKED_AT)] };
  }
}

/** True while a symptom is there, when only these causes are left; a detail while its symptom is there as well. */
export function isSeen(session: Session, symptom: string, left: ReadonlySet<string>): boolean {
  const by = session.setOff.get(symptom);
  if (by === undefined || (by.detailOf !== undefined && !isSeen(session, by.detailOf, left))) return false;
  return by.byItself || by.causes.some((cause) => left.has(cause)) || by.earlier.some((earlier) => isSeen(session, earlier, left));
}

/** Share of the told symptoms, details left out, that are still there when only these causes are left: 1 with all causes. */
export function shareLeft(session: Session, left: ReadonlySet<string>): number {
  const seen = session.told.filter((symptom) => session.setOff.get(symptom)?.detailOf === undefined && isSeen(session, symptom, session.causes));
  return seen.filter((symptom) => isSeen(session, symptom, left)).length / seen.length;
}

/** Causes, of those left, that a told symptom comes from: what has to be cured. A detail goes with its symptom. */
export function culprits(session: Session, left: ReadonlySet<string>): ReadonlySet<string> {
  const found = new Set<string>();
  const from = (symptom: string): void => {
    const by = session.setOff.get(symptom);
    for (const cause of by?.causes ?? []) if (left.has(cause)) found.add(cause);
    by?.earlier.forEach(from);
  };
  session.told.filter((symptom) => session.setOff.get(symptom)?.detailOf === undefined).forEach(from);
  return found;
}

function drawFacts(random: () => number): Pick<CaseFile, 'machine' | 'print'> {
  const oneOf = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const told = <T>(name: string, list: readonly T[]): Record<string, T> => { const value = oneOf(list); return random() < 0.6 && value !== undefined ? { [name]: value } : {}; };
  return {
    machine: { ...told('kinematics', ['moving-bed', 'crossed-belts', 'delta'] as const), ...told('feedPath', ['short', 'long'] as const), ...told('enclosure', ['open', 'closed'] as const), ...told('supply', ['12 V', '24 V'] as const) },
    print: { ...told('material', [...MATERIALS, 'PLA', 'PLA', 'PLA'] as const), ...told('onset', ['always', 'suddenly', 'gradually', 'sometimes'] as const), ...(random() < 0.3 ? { touched: [oneOf(TOUCHED) ?? 'fan'] } : {}) },
  };
}

function drawSymptoms(knowledge: Knowledge, causes: ReadonlySet<string>, random: () => number): Map<string, SetOff> {
  const setOff = new Map<string, SetOff>();
  for (const symptom of inOrderOfChains(knowledge)) {
    const by: SetOff = {
      detailOf: symptom.detailOf,
      byItself: random() < symptom.leak,
      causes: Object.entries(symptom.links).filter(([id, link]) => causes.has(id) && random() < link.chance).map(([id]) => id),
      earlier: Object.entries(symptom.followsFrom).filter(([id, link]) => setOff.has(id) && random() < link.chance).map(([id]) => id),
    };
    const parentIsThere = symptom.detailOf === undefined || setOff.has(symptom.detailOf);
    if (parentIsThere && (by.byItself || by.causes.length > 0 || by.earlier.length > 0)) setOff.set(symptom.id, by);
  }
  return setOff;
}

/** Earlier symptoms and those with details first; chains have no circle. */
function inOrderOfChains(knowledge: Knowledge): KnownSymptom[] {
  const order = new Map<string, KnownSymptom>();
  const visit = (id: string): void => {
    const symptom = knowledge.symptoms[id];
    if (!symptom || order.has(id)) return;
    if (symptom.detailOf !== undefined) visit(symptom.detailOf);
    Object.keys(symptom.followsFrom).forEach(visit);
    order.set(id, symptom);
  };
  Object.keys(knowledge.symptoms).forEach(visit);
  return [...order.values()];
}

/** Symptoms that share a cause with this one. */
function lookalikes(id: string, knowledge: Knowledge): string[] {
  const own = knowledge.symptoms[id];
  return Object.values(knowledge.symptoms)
    .filter((other) => other.id !== id && (other.detailOf === undefined || other.detailOf === id) && Object.keys(other.links).some((cause) => own?.links[cause] !== undefined))
    .map((other) => other.id);
}

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  return list.map((value) => ({ value, at: random() })).sort((a, b) => a.at - b.at).map(({ value }) => value);
}
