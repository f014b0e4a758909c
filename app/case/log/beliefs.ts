'use client';
import { useEffect, useMemo, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { diagnose, type Diagnosis, type Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { useDiagnosis } from '../../_case/use-diagnosis';
import { useKnowledgeOfCase } from '../../_case/use-knowledge-of-case';
import type { Beliefs } from './report-facts';

/** No ranking, because too much was told; what was told holds all the same. */
export interface NoBeliefs {
  readonly kind: 'too-much';
  readonly items: readonly Evidence[];
  readonly confirmFirst: readonly string[];
}

/** What was believed at the start, after the checks, and now; or that too much was told for that. Ranges follow a moment after the chances. */
export function useBeliefs(file: CaseFile, pages: Knowledge): Beliefs | NoBeliefs | undefined {
  const now = useDiagnosis(file, pages)?.result;
  const knowledge = useKnowledgeOfCase(file, pages);
  const { observations, findings, machine, print, rounds, casebook } = file;
  const fitted = rounds.find((round) => round.fittedOn !== undefined)?.number ?? Infinity;
  const hasProof = rounds.some((round) => round.verdict !== undefined);
  const earlier = useMemo(() => ({ ...BARE, machine, print, ...(casebook === undefined ? {} : { casebook }), observations: observations.filter((each) => each.round <= fitted), findings: findings.filter((each) => each.round <= fitted) }), [observations, findings, machine, print, casebook, fitted]);
  const start = useMemo(() => knowledge && diagnose({ ...earlier, findings: [] }, knowledge, { copies: 0 }), [earlier, knowledge]);
  const quick = useMemo(() => knowledge && diagnose(earlier, knowledge, { copies: 0 }), [earlier, knowledge]);
  const [banded, setBanded] = useState<{ readonly of: unknown; readonly result: Diagnosis }>();
  useEffect(() => {
    if (fitted === Infinity || !knowledge) return;
    const timer = setTimeout(() => {
      const result = diagnose(earlier, knowledge);
      if (result.kind === 'diagnosis') setBanded({ of: earlier, result });
    }, 60);
    return () => clearTimeout(timer);
  }, [earlier, knowledge, fitted]);
  if (!now || !start || !quick) return undefined;
  if (now.kind === 'too-much') return now;
  if (start.kind === 'too-much' || quick.kind === 'too-much') return { kind: 'too-much', items: now.items, confirmFirst: [] };
  // A change that is fitted counts as likely done already; the checks speak of the machine before it.
  const checked = fitted === Infinity ? now : banded?.of === earlier ? banded.result : quick;
  return { kind: 'beliefs', start, checked, now, hasChecks: earlier.findings.length > 0, hasProof };
}

/** A case of which only what was seen and found matters. */
const BARE: CaseFile = { schema: 'leeward/case', version: 1, id: 'earlier', title: '', words: '', machine: {}, print: {}, observations: [], findings: [], rounds: [], log: [], state: 'open' };
