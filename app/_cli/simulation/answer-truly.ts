import { mulberry32 } from '@/lib/inference';
import { chanceOfClass, type Knowledge, type KnownCheck, type KnownRemedy } from '@/lib/knowledge';
import type { Evidence } from '@/lib/diagnosis';

/** Standard uncertainty of a simulated reading, as a share of the reading's own spread. Estimate. */
const OWN_DOUBT = 0.3;

/**
 * What a check shows when these causes are there. Chance hangs on session, check and cause only, so every policy that
 * takes the same check in the same session finds the same.
 */
export function answerTruly(check: KnownCheck, method: string, present: ReadonlySet<string>, round: number, knowledge: Knowledge, key: string): Evidence | undefined {
  const finding = { check: check.id, method, round };
  if (check.answer.kind === 'yes-no') {
    const isSo = luck(`${key} ${check.id} leak`) < check.leak || Object.entries(check.yes).some(([id, link]) => present.has(id) && luck(`${key} ${check.id} ${id}`) < link.chance);
    const isMisled = luck(`${key} ${check.id} misled`) < chanceOfClass(knowledge.methods[method]?.misleads ?? 'uncommon');
    return { kind: 'answer', about: check.id, round, yes: isSo !== isMisled, finding: { ...finding, answer: isSo === isMisled ? 'no' : 'yes' } };
  }
  const healthy = check.otherwise;
  if (healthy === undefined) return undefined;
  const moved = Object.entries(check.reads).filter(([id, read]) => present.has(id) && luck(`${key} ${check.id} ${id}`) < read.chance).map(([, read]) => read);
  // The strangest model wins, as in the net of a case.
  const distance = (median: number): number => (median > 0 && healthy.median > 0 ? Math.abs(Math.log(median / healthy.median)) : Math.abs(median - healthy.median));
  const model = moved.sort((a, b) => distance(b.median) - distance(a.median))[0] ?? healthy;
  const off = model.spread * normal(luck(`${key} ${check.id} a`), luck(`${key} ${check.id} b`));
  const value = model.shape === 'normal' ? model.median + off : model.median * Math.exp(off);
  return { kind: 'reading', about: check.id, round, value, standardUncertainty: OWN_DOUBT * (model.shape === 'normal' ? model.spread : Math.abs(value) * model.spread), finding };
}

/** The causes that are left after a change. Whether it works hangs on session, change and cause only. */
export function leftAfter(remedy: KnownRemedy, present: ReadonlySet<string>, key: string): ReadonlySet<string> {
  return new Set([...present].filter((cause) => luck(`${key} ${remedy.id} ${cause}`) >= (remedy.cures[cause]?.chance ?? 0)));
}

function normal(a: number, b: number): number {
  return Math.sqrt(-2 * Math.log(1 - a)) * Math.cos(2 * Math.PI * b);
}

/** A number in [0, 1) that hangs on these words only (32-bit FNV-1a, then the seeded stream). */
function luck(words: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < words.length; at += 1) hash = Math.imul(hash ^ words.charCodeAt(at), 0x01000193);
  return mulberry32(hash)();
}
