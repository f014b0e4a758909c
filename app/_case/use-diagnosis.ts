'use client';
import { useEffect, useMemo, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { diagnose, minutesToCure, nextChecks, rankRemedies, type Diagnosis, type MinutesToCure, type NextCheck, type RankedRemedy, type TooMuchAtOnce } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';

export interface CaseDiagnosis {
  /** The exact ranking, there at once; its bands follow a moment later. */
  readonly result: Diagnosis | TooMuchAtOnce;
  /** Next checks and remedies; undefined for the moment it takes to reckon them. */
  readonly next: readonly NextCheck[] | undefined;
  readonly remedies: readonly RankedRemedy[] | undefined;
  /** Expected minutes to a cure, and what the best checks would save of them. */
  readonly minutes: MinutesToCure | undefined;
  /** Chance of each cause before the last change of the case. */
  readonly was: ReadonlyMap<string, number>;
}

interface Later {
  readonly of: Diagnosis | TooMuchAtOnce;
  readonly banded: Diagnosis;
  readonly next: readonly NextCheck[];
  readonly remedies: readonly RankedRemedy[];
  readonly minutes: MinutesToCure;
}

/** Checks whose saving in minutes is reckoned: those that the page may show. */
const WEIGHED = 12;

/* Chances of the last two states of the case on the table, kept over moving between pages. */
let remembered: { readonly key: string; readonly chances: ReadonlyMap<string, number>; readonly before: ReadonlyMap<string, number> } | undefined;

/** The diagnosis of a case: the ranking in the same frame, bands, next checks and remedies right after it. */
export function useDiagnosis(file: CaseFile | undefined, knowledge: Knowledge | undefined): CaseDiagnosis | undefined {
  const result = useMemo(() => (file && knowledge ? diagnose(file, knowledge, { copies: 0 }) : undefined), [file, knowledge]);
  const [later, setLater] = useState<Later>();
  useEffect(() => {
    if (!file || !knowledge || result?.kind !== 'diagnosis') return;
    const timer = setTimeout(() => {
      const next = nextChecks(result, knowledge, { lacksTools: file.lacksTools ?? [] });
      const remedies = rankRemedies(result, knowledge);
      const minutes = minutesToCure(result, next.slice(0, WEIGHED), knowledge);
      const banded = diagnose(file, knowledge);
      if (banded.kind === 'diagnosis') setLater({ of: result, banded, next, remedies, minutes });
    }, 30);
    return () => clearTimeout(timer);
  }, [file, knowledge, result]);
  const was = useMemo(() => remember(file, result), [file, result]);
  if (!result) return undefined;
  const ready = later?.of === result ? later : undefined;
  return { result: ready?.banded ?? result, next: ready?.next, remedies: ready?.remedies, minutes: ready?.minutes, was };
}

function remember(file: CaseFile | undefined, result: Diagnosis | TooMuchAtOnce | undefined): ReadonlyMap<string, number> {
  if (!file || result?.kind !== 'diagnosis') return new Map();
  const key = `${file.id} ${JSON.stringify([file.observations, file.findings, file.machine, file.print, file.rounds])}`;
  const chances = new Map(result.causes.map((cause) => [cause.id, cause.probability]));
  if (remembered?.key !== key) {
    const sameCase = remembered?.key.startsWith(`${file.id} `) === true;
    remembered = { key, chances, before: sameCase && remembered ? remembered.chances : chances };
  }
  return remembered.before;
}
