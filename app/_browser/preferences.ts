'use client';
import { useSyncExternalStore } from 'react';

export interface Preferences {
  readonly paper: 'paper' | 'blueprint';
  readonly units: 'metric' | 'imperial';
}

const DEFAULTS: Preferences = { paper: 'paper', units: 'metric' };
let current: Preferences | undefined;
const listeners = new Set<() => void>();

/** The chosen paper (light or dark) and units; the defaults while the page is being built. */
export function usePreferences(): Preferences {
  return useSyncExternalStore(subscribe, read, () => DEFAULTS);
}

/** Changes between paper and blueprint and remembers it on this device. */
export function choosePaper(paper: Preferences['paper']): void {
  document.documentElement.dataset.theme = paper;
  remember('leeward.paper', paper);
  change({ ...read(), paper });
}

/** Changes between metric and imperial units for what is shown; typing any unit is always allowed. */
export function chooseUnits(units: Preferences['units']): void {
  remember('leeward.units', units);
  change({ ...read(), units });
}

function read(): Preferences {
  current ??= {
    paper: (recall('leeward.paper') ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'blueprint' : 'paper')) === 'blueprint' ? 'blueprint' : 'paper',
    units: recall('leeward.units') === 'imperial' ? 'imperial' : 'metric',
  };
  return current;
}

function change(next: Preferences): void {
  current = next;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/* Storage may be forbidden (private window); the choice then lasts as long as the page. */
function remember(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    /* kept in memory only */
  }
}

function recall(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
