'use client';
import { useEffect, useMemo, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { diagnose, type Diagnosis } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { useDiagnosis } from '../../_case/use-diagnosis';
import { useKnowledgeOfCase } from '../../_case/use-knowledge-of-case';
import type { Beliefs } from './report-facts';

/** What was believed at the start, after the checks, and now. Ranges follow a moment after the chances. */
export function useBeliefs(file: CaseFile, pages: Knowledge): Beliefs | undefined {
  const now = useDiagnosis(file, pages)?.result;
  const knowledge = useKnowledgeOfCase(file, pages);
  const { observations, findings, machine, print, rounds } = file;
  const fitted = rounds.find((round) => round.fittedOn !== undefined)?.number ?? Infinity;
  const hasProof = rounds.some((round) => round.verdict !== undefined);
  const earlier = useMemo(() => ({ ...BARE, machine, print, observations: observations.filter((each) => each.round <= fitted), findings: findings.filter((each) => each.round <= fitted) }), [observations, findings, machine, print, fitted]);
  const start = useMemo(() => knowledge && usable(diagnose({ ...earlier, findings: [] }, knowledge, { copies: 0 })), [earlier, knowledge]);
  const quick = useMemo(() => knowledge && usable(diagnose(earlier, knowledge, { copies: 0 })), [earlier, knowledge]);
  const [banded, setBanded] = useState<{ readonly of: unknown; readonly result: Diagnosis }>();
  useEffect(() => {
    if (!hasProof || !knowledge) return;
    const timer = setTimeout(() => {
      const result = usable(diagnose(earlier, knowledge));
      if (result) setBanded({ of: earlier, result });
    }, 60);
    return () => clearTimeout(timer);
  }, [earlier, knowledge, hasProof]);
  if (now?.kind !== 'diagnosis' || !start || !quick) return undefined;
  const checked = !hasProof ? now : banded?.of === earlier ? banded.result : quick;
  return { start, checked, now, hasChecks: earlier.findings.length > 0, hasProof };
}

/** A case of which only what was seen and found matters. */
const BARE: CaseFile = { schema: 'leeward/case', version: 1, id: 'earlier', title: '', words: '', machine: {}, print: {}, observations: [], findings: [], rounds: [], log: [], state: 'open' };

function usable(result: ReturnType<typeof diagnose>): Diagnosis | undefined {
  return result.kind === 'diagnosis' ? result : undefined;
}
