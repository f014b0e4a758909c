'use client';
import { startTransition, useEffect, useMemo, useRef, useState } from 'react';
import { readAirPath, type AirPath, type AirPathResult, type PathFaults } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import type { Problem } from '@/lib/problems';
import { startedWorker } from '../_browser/started-worker';
import type { AirAnswer, AirQuestion } from './air-worker';
import type { Sheet } from './sheet';

export interface ReckonedPath {
  /** The path as last readable; it changes in the same frame as the sheet. */
  readonly path: AirPath | undefined;
  /** The newest answer; a coarse one comes a moment after a change, the whole one when the hand is still. */
  readonly result: AirPathResult | undefined;
  readonly problems: readonly Problem[];
}

/**
 * Reads the sheet at once and has it reckoned beside the page, so that drawing and typing never wait.
 * A sheet that cannot be read keeps the last good picture.
 */
export function useAirPath(sheet: Sheet, faults: PathFaults | undefined): ReckonedPath {
  const text = useMemo(() => JSON.stringify(sheet), [sheet]);
  const read = useMemo(() => readAirPath(text), [text]);
  const [path, setPath] = useState(read.value);
  if (read.value !== undefined && read.value !== path) setPath(read.value);
  const [result, setResult] = useState<AirPathResult>();
  const [alone, setAlone] = useState(false);
  const worker = useRef<Worker>(undefined);
  const asked = useRef<AirQuestion>({ id: 0, text: '', faults: undefined });
  useEffect(() => {
    const started = startedWorker(() => new Worker(new URL('./air-worker.ts', import.meta.url), { type: 'module' }));
    if (started === undefined) {
      const timer = setTimeout(() => setAlone(true), 0);
      return () => clearTimeout(timer);
    }
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
    const ask = (): void => {
      const last = asked.current;
      if (worker.current === undefined || (last.text === text && last.faults === faults)) return;
      asked.current = { id: last.id + 1, text, faults };
      worker.current.postMessage(asked.current satisfies AirQuestion);
    };
    const reckonHere = (): void => setResult(compareAirOptions(value, problems, faults === undefined ? {} : { faults }));
    // Even the asking waits until the changed drawing is made.
    const timer = setTimeout(alone ? reckonHere : ask, alone ? 200 : 0);
    return () => clearTimeout(timer);
  }, [text, read, alone, faults]);
  return { path: read.value ?? path, result, problems: read.problems };
}
