'use client';
import { startTransition, useEffect, useMemo, useRef, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { diagnose, withBands, type Diagnosis, type RankedCause, type ToldStep, type TooMuchAtOnce } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { whenForeseen } from './current-case';
import type { LaterPart, Reasons, Wanted, WayOn } from './later';
import { reckonLater } from './reckon-later';
import { tellsTheSame } from './tells-the-same';
import { useKnowledgeOfCase } from './use-knowledge-of-case';

/** A ranking, and what follows it a moment later: parts of `WayOn` are undefined until they are reckoned, and where they were not asked for. */
export interface CaseDiagnosis extends Partial<WayOn> {
  /** The exact ranking, there at once; its bands follow a moment later. */
  readonly result: Diagnosis | TooMuchAtOnce;
  /** The last diagnosis whose bands are reckoned: of this very case when settled, of the case before the last change until then. */
  readonly banded: Diagnosis | undefined;
  /** The step that was reckoned last: of the case before the last change until this one's is there. */
  readonly lastStep: ToldStep | undefined;
  /** Each part is undefined until it has been reckoned, and where it was not asked for. */
  readonly reasons: Reasons;
  /** True when the bands are there too. */
  readonly isSettled: boolean;
  /** The causes before the last change of the case. */
  readonly was: readonly RankedCause[];
}

/** What has come in for a ranking so far. */
interface Later {
  readonly of: Diagnosis | TooMuchAtOnce;
  /** One ranking may serve two cases: a tool that is lacking changes nothing but the way on. */
  readonly file: CaseFile;
  readonly wayOn?: WayOn;
  readonly reasons: Reasons;
}

const NO_REASONS: Reasons = {};
const NOTHING_MORE: readonly Wanted[] = [];

/** The ranking of a case as the control that is being pressed will make it. */
interface Foreseen {
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
  readonly result: Diagnosis | TooMuchAtOnce;
}

/* Chances of the last two states of the case on the table, kept over moving between pages. */
let remembered: { readonly file: CaseFile; readonly causes: readonly RankedCause[]; readonly before: readonly RankedCause[] } | undefined;

/**
 * The diagnosis of a case: the ranking in the same frame, and all that follows it as soon as it has been reckoned beside the page.
 * `wanted` must be the same list every time.
 */
export function useDiagnosis(file: CaseFile | undefined, pages: Knowledge | undefined, wanted = NOTHING_MORE): CaseDiagnosis | undefined {
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
  const [lastStep, setLastStep] = useState<ToldStep>();
  useEffect(() => {
    if (!file || !knowledge || result?.kind !== 'diagnosis') return;
    return reckonLater({ file, knowledge, wanted }, (part) => startTransition(() => {
      if (part.kind === 'bands') setBanded({ of: result, diagnosis: withBands(result, part.causes) });
      else setLater((before) => withPart(before?.of === result && before.file === file ? before : { of: result, file, reasons: NO_REASONS }, part));
      if (part.kind === 'way-on') setLastStep(part.wayOn.step);
    }));
  }, [file, knowledge, result, wanted]);
  const was = useMemo(() => remember(file, result), [file, result]);
  const ready = later?.of === result && later?.file === file ? later : undefined;
  const settled = banded?.of === result ? banded?.diagnosis : undefined;
  const lastBanded = banded?.diagnosis;
  return useMemo(() => result && { ...ready?.wayOn, result: settled ?? result, reasons: ready?.reasons ?? NO_REASONS, lastStep, banded: lastBanded, isSettled: settled !== undefined, was }, [result, ready, settled, lastBanded, lastStep, was]);
}

function withPart(later: Later, part: Exclude<LaterPart, { kind: 'bands' }>): Later {
  return part.kind === 'way-on' ? { ...later, wayOn: part.wayOn } : { ...later, reasons: { ...later.reasons, ...part.reasons } };
}

function remember(file: CaseFile | undefined, result: Diagnosis | TooMuchAtOnce | undefined): readonly RankedCause[] {
  if (!file || result?.kind !== 'diagnosis') return [];
  if (!remembered || !tellsTheSame(remembered.file, file)) {
    const { causes } = result;
    remembered = { file, causes, before: remembered?.file.id === file.id ? remembered.causes : causes };
  }
  return remembered.before;
}
