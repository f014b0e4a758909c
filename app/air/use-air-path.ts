'use client';
import { startTransition, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { readAirPath, type AirPath, type AirPathResult, type PathFaults } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import type { Problem } from '@/lib/problems';
import type { AirAnswer, AirQuestion } from './air-worker';
import type { Sheet } from './sheet';

export interface ReckonedPath {
  /** The path as last readable; it changes in the same frame as the sheet. */
  readonly path: AirPath | undefined;
  /** The newest answer; a coarse one comes a moment after a change, the whole one when the hand is still. */
  readonly result: AirPathResult | undefined;
  readonly problems: readonly Problem[];
  /** Has a sheet reckoned that is about to be shown: the answer is under way while the drawing is made. */
  readonly hasten: (sheet: Sheet) => void;
}

/**
 * Reads the sheet at once and has it reckoned beside the page, so that drawing and typing never wait.
 * A sheet that cannot be read keeps the last good picture.
 */
export function useAirPath(sheet: Sheet, faults: PathFaults | undefined): ReckonedPath {
  const text = useMemo(() => JSON.stringify(sheet), [sheet]);
  const read = useMemo(() => readOnce(text), [text]);
  const [path, setPath] = useState(read.value);
  if (read.value !== undefined && read.value !== path) setPath(read.value);
  const [result, setResult] = useState<AirPathResult>();
  const [alone, setAlone] = useState(false);
  const worker = useRef<Worker>(undefined);
  const asked = useRef<AirQuestion>({ id: 0, text: '', faults: undefined });
  const ask = useCallback((question: Omit<AirQuestion, 'id'>): void => {
    const last = asked.current;
    if (worker.current === undefined || (last.text === question.text && last.faults === question.faults)) return;
    asked.current = { id: last.id + 1, ...question };
    worker.current.postMessage(asked.current satisfies AirQuestion);
  }, []);
  useEffect(() => {
    const started = new Worker(new URL('./air-worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', (event: MessageEvent<AirAnswer>) => { if (event.data.id === asked.current.id) startTransition(() => setResult(event.data.result)); });
    // A browser that refuses the worker reckons on the page itself, whole and a moment later.
    started.addEventListener('error', () => setAlone(true));
    worker.current = started;
    asked.current = { ...asked.current, text: '' };
    return () => started.terminate();
  }, []);
  useEffect(() => {
    const { value, problems } = read;
    if (value === undefined) return;
    if (!alone) {
      ask({ text, faults });
      return;
    }
    const timer = setTimeout(() => setResult(compareAirOptions(value, problems, faults === undefined ? {} : { faults })), 200);
    return () => clearTimeout(timer);
  }, [ask, text, read, alone, faults]);
  const hasten = useCallback((next: Sheet): void => {
    const soon = JSON.stringify(next);
    if (readOnce(soon).value !== undefined) ask({ text: soon, faults });
  }, [ask, faults]);
  return { path: read.value ?? path, result, problems: read.problems, hasten };
}

/* The sheet that is hastened is the one that is drawn next. */
let lastRead: { readonly text: string; readonly read: ReturnType<typeof readAirPath> } | undefined;

function readOnce(text: string): ReturnType<typeof readAirPath> {
  if (lastRead?.text !== text) lastRead = { text, read: readAirPath(text) };
  return lastRead.read;
}
