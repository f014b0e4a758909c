'use client';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { diagnose, minutesToCure, rankRemedies, type Diagnosis, type MinutesToCure, type NextCheck, type RankedCause, type RankedRemedy, type SameAdvice, type Step, type TooMuchAtOnce } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { whenForeseen } from './current-case';
import { inSteps } from './in-steps';
import { triedChanges } from './tried-changes';
import { checksOfCase, stepOfCase } from './step-of-case';
import { tellsTheSame } from './tells-the-same';
import { useKnowledgeOfCase } from './use-knowledge-of-case';

export interface CaseDiagnosis {
  /** The exact ranking, there at once; its bands follow a moment later. */
  readonly result: Diagnosis | TooMuchAtOnce;
  /** Next checks and remedies; undefined for the moment it takes to reckon them. */
  readonly next: readonly NextCheck[] | undefined;
  readonly remedies: readonly RankedRemedy[] | undefined;
  /** What the next step is worth, and what the best checks would save. */
  readonly minutes: MinutesToCure | undefined;
  /** The last diagnosis whose bands are reckoned: of this very case when settled, of the case before the last change until then. */
  readonly banded: Diagnosis | undefined;
  /** What is done next. */
  readonly step: Step | undefined;
  /** The step that was reckoned last: of the case before the last change until this one's is there. */
  readonly lastStep: Step | undefined;
  /** How surely the advice stays whatever the next checks say; undefined when that cannot be said. */
  readonly advice: SameAdvice | undefined;
  /** True when the bands are there too and nothing of this will change by itself. */
  readonly isSettled: boolean;
  /** The causes before the last change of the case. */
  readonly was: readonly RankedCause[];
}

interface Later {
  readonly of: Diagnosis | TooMuchAtOnce;
  readonly next: readonly NextCheck[];
  readonly remedies: readonly RankedRemedy[];
  readonly minutes: MinutesToCure;
  readonly step: Step;
  readonly advice: SameAdvice | undefined;
}

/** The ranking of a case as the control that is being pressed will make it. */
interface Foreseen {
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
  readonly result: Diagnosis | TooMuchAtOnce;
}

/** Checks whose saving in minutes is reckoned: those that the page may show. */
const WEIGHED = 12;

/* Where one exact answer is dear, fewer copies are drawn, so that the page never stands still. */
const UNITS_FOR_BANDS = 2e8;
/** Below this many copies a band says nothing; none is drawn then. */
const FEWEST_COPIES = 20;

/* Chances of the last two states of the case on the table, kept over moving between pages. */
let remembered: { readonly file: CaseFile; readonly causes: readonly RankedCause[]; readonly before: readonly RankedCause[] } | undefined;

/** The diagnosis of a case: the ranking in the same frame, bands, next checks and remedies right after it. */
export function useDiagnosis(file: CaseFile | undefined, pages: Knowledge | undefined): CaseDiagnosis | undefined {
  const knowledge = useKnowledgeOfCase(file, pages);
  // Both spare work and change no figure: read while drawing they cannot mislead.
  const earlier = useRef<Diagnosis>(undefined);
  const foreseen = useRef<Foreseen>(undefined);
  const result = useMemo(() => {
    if (!file || !knowledge) return undefined;
    const ready = foreseen.current;
    if (ready?.knowledge === knowledge && tellsTheSame(ready.file, file)) return ready.result;
    return diagnose(file, knowledge, { copies: 0, earlier: earlier.current });
  }, [file, knowledge]);
  useEffect(() => { if (result?.kind === 'diagnosis') earlier.current = result; }, [result]);
  useEffect(() => knowledge && whenForeseen((next) => {
    foreseen.current = { file: next, knowledge, result: diagnose(next, knowledge, { copies: 0, earlier: earlier.current }) };
  }), [knowledge]);
  const [later, setLater] = useState<Later>();
  const [banded, setBanded] = useState<{ readonly of: Diagnosis | TooMuchAtOnce; readonly diagnosis: Diagnosis }>();
  useEffect(() => {
    if (!file || !knowledge || result?.kind !== 'diagnosis') return;
    const units = Math.max(1, result.prepared.cost.units);
    const copies = Math.min(100, Math.floor(UNITS_FOR_BANDS / units));
    let next: readonly NextCheck[] = [];
    return inSteps([
      () => { next = checksOfCase(result, file, knowledge); },
      () => {
        const { standing, advice, step } = stepOfCase(result, next, file, knowledge);
        setLater({ of: result, next, remedies: rankRemedies(result, knowledge, triedChanges(file)), minutes: minutesToCure(standing, step, next.slice(0, WEIGHED).map((row) => row.check)), step, advice });
      },
      () => {
        const diagnosis = diagnose(file, knowledge, { copies: copies < FEWEST_COPIES ? 0 : copies, earlier: result });
        if (diagnosis.kind === 'diagnosis') setBanded({ of: result, diagnosis });
      },
    ]);
  }, [file, knowledge, result]);
  const was = useMemo(() => remember(file, result), [file, result]);
  const ready = later?.of === result ? later : undefined;
  const settled = banded?.of === result ? banded?.diagnosis : undefined;
  const lastBanded = banded?.diagnosis;
  const lastStep = later?.step;
  return useMemo(() => result && { result: settled ?? result, next: ready?.next, remedies: ready?.remedies, minutes: ready?.minutes, step: ready?.step, lastStep, advice: ready?.advice, banded: lastBanded, isSettled: settled !== undefined, was }, [result, ready, settled, lastBanded, lastStep, was]);
}

function remember(file: CaseFile | undefined, result: Diagnosis | TooMuchAtOnce | undefined): readonly RankedCause[] {
  if (!file || result?.kind !== 'diagnosis') return [];
  if (!remembered || !tellsTheSame(remembered.file, file)) {
    const { causes } = result;
    remembered = { file, causes, before: remembered?.file.id === file.id ? remembered.causes : causes };
  }
  return remembered.before;
}
