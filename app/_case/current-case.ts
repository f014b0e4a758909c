'use client';
import { useEffect, useSyncExternalStore } from 'react';
import type { CaseFile } from '@/lib/cases';
import { caseStore } from '../_browser/case-store';

/** The case on the table: loading, none, or the file. `kept` is false when this browser cannot store it. */
export type CurrentCase =
  | { readonly state: 'loading' }
  | { readonly state: 'none' }
  | { readonly state: 'open'; readonly file: CaseFile; readonly kept: boolean };

const KEY = 'leeward.case';
const BEFORE: CurrentCase = { state: 'loading' };
let current: CurrentCase = BEFORE;
let loading: Promise<void> | undefined;
const listeners = new Set<() => void>();
let lastWrite: Promise<void> = Promise.resolve();

/** The case on the table, followed by this component. It survives reload and moving between pages. */
export function useCurrentCase(): CurrentCase {
  useEffect(() => void load(), []);
  return useSyncExternalStore(subscribe, () => current, () => BEFORE);
}

/** Puts a case on the table and keeps it on this device. Resolves when it is stored. */
export function openCase(file: CaseFile): Promise<void> {
  const stored = { ...file, changedOn: new Date().toISOString() };
  // First shown, then written: the write waits for the next turn, so that the page is drawn before it.
  set({ state: 'open', file: stored, kept: true });
  const turn = new Promise<void>((resolve) => setTimeout(resolve));
  lastWrite = Promise.all([caseStore(), turn]).then(async ([store]) => {
    if (!store.kept && current.state === 'open' && current.file === stored) set({ state: 'open', file: stored, kept: false });
    pointTo(stored.id);
    await store.put(stored);
  });
  return lastWrite;
}

type Change = (file: CaseFile) => CaseFile;

/** Changes the case on the table; does nothing when there is none. Resolves when it is stored. `name`: see `foreseeChange`. */
export function changeCase(change: Change, name?: string): Promise<void> {
  if (current.state !== 'open') return Promise.resolve();
  return openCase(foreseen && foreseen.name === name && foreseen.from === current.file ? foreseen.to : change(current.file));
}

/* What a control that is being pressed will make of the case when it is let go. */
let foreseen: { readonly name: string; readonly from: CaseFile; readonly to: CaseFile } | undefined;
const foreseers = new Set<(file: CaseFile) => void>();

/**
 * To be called when a control is pressed that makes this change when it is let go: whoever follows the case can reckon with
 * it meanwhile, about a tenth of a second. Nothing is changed yet. `name` tells one change of this case from another.
 */
export function foreseeChange(change: Change, name: string): void {
  if (current.state !== 'open') return;
  foreseen = { name, from: current.file, to: change(current.file) };
  for (const foresee of foreseers) foresee(foreseen.to);
}

/** Calls `foresee` with the case as it will be, at every press of a control that tells. Gives back what ends it. */
export function whenForeseen(foresee: (file: CaseFile) => void): () => void {
  foreseers.add(foresee);
  return () => foreseers.delete(foresee);
}

/** Takes the case off the table; it stays in the casebook. */
export function putCaseAway(): void {
  pointTo(undefined);
  set({ state: 'none' });
}

/** A new empty case. Its id is short enough to be said aloud: the date and a count letter. */
export function newCase(words = ''): CaseFile {
  const now = new Date();
  const stamp = `${now.getFullYear()}-${pad(now.getMonth() + 1)}${pad(now.getDate())}-${pad(now.getHours())}${pad(now.getMinutes())}${pad(now.getSeconds())}`;
  return { schema: 'leeward/case', version: 1, id: stamp, title: '', createdOn: now.toISOString(), words, machine: {}, print: {}, observations: [], findings: [], rounds: [], log: [], state: 'open' };
}

/** Number of the round a case is in. */
export function roundOf(file: Pick<CaseFile, 'rounds'>): number {
  return file.rounds[file.rounds.length - 1]?.number ?? 1;
}

/** Number of the round that what is told now belongs to: once a change is fitted, what is seen is seen after it, also before the verdict. */
export function toldRound(file: Pick<CaseFile, 'rounds'>): number {
  const last = file.rounds[file.rounds.length - 1];
  return roundOf(file) + Number(last?.fittedOn !== undefined && last.verdict === undefined);
}

function load(): Promise<void> {
  loading ??= caseStore().then(async (store) => {
    const id = pointedTo();
    const file = id === null ? undefined : await store.one(id);
    if (current.state === 'loading') set(file ? { state: 'open', file, kept: store.kept } : { state: 'none' });
  });
  return loading;
}

function set(next: CurrentCase): void {
  current = next;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function pointTo(id: string | undefined): void {
  document.documentElement.toggleAttribute('data-case', id !== undefined);
  try {
    if (id === undefined) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, id);
  } catch {
    /* storage forbidden: the case stays on the table for this page only */
  }
}

function pointedTo(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function pad(value: number): string {
  return String(value).padStart(2, '0');
}
