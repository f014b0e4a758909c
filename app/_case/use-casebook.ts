'use client';
import { useEffect } from 'react';
import type { CaseFile } from '@/lib/cases';
import { casebookOf, curedCauses, isProvenCure, type TaughtCase } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { caseStore } from '../_browser/case-store';
import { changeCase } from './current-case';
import { inSteps } from './in-steps';

/** Stillness before the casebook is asked, ms: the name of a machine is typed letter by letter. */
const STILL = 800;

/**
 * Asks the casebook of this device what its proven cases teach an open case, once for each name of its machine, and notes the
 * answer in the case. Nothing is asked again afterwards: what a ranking rests on does not change by itself.
 */
export function useCasebook(file: CaseFile, knowledge: Knowledge): void {
  const { id, machine, state, casebook } = file;
  const isToAsk = state === 'open' && (casebook === undefined || casebook.machine !== machine.name);
  const isLeftOut = casebook?.leftOut === true;
  useEffect(() => {
    if (!isToAsk) return;
    let stop = (): void => undefined;
    const timer = setTimeout(() => {
      void caseStore().then((store) => store.all()).then((all) => {
        const proven = all.filter((each) => each.id !== id && isProvenCure(each));
        if (proven.length === 0) return;
        const taught: TaughtCase[] = [];
        stop = inSteps([
          ...proven.map((each) => () => { const cured = curedCauses(each, knowledge); if (cured) taught.push({ file: each, cured }); }),
          () => {
            const found = casebookOf(taught, { machine: machine.name === undefined ? {} : { name: machine.name } });
            if (found) void changeCase((now) => (now.id === id ? { ...now, casebook: isLeftOut ? { ...found, leftOut: true } : found } : now));
          },
        ]);
      });
    }, STILL);
    return () => { clearTimeout(timer); stop(); };
  }, [id, machine.name, isToAsk, isLeftOut, knowledge]);
}
