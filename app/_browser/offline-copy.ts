'use client';
import { useSyncExternalStore } from 'react';

/** The copy of the whole site on this device: none (yet), being fetched, whole, or whole with a newer one beside it. */
export interface OfflineCopy {
  readonly copy: 'none' | 'coming' | 'kept' | 'newer';
  readonly isOnline: boolean;
}

const BEFORE: OfflineCopy = { copy: 'none', isOnline: true };
let now = BEFORE;
const listeners = new Set<() => void>();

/** The state of the offline copy, followed by this component. */
export function useOfflineCopy(): OfflineCopy {
  return useSyncExternalStore(subscribe, () => now, () => BEFORE);
}

/** Registers the worker that keeps a copy of the whole site on this device, so that it opens in the shed too; and listens to the network. */
export function startOfflineCopy(): void {
  const network = (): void => set({ isOnline: navigator.onLine });
  addEventListener('online', network);
  addEventListener('offline', network);
  network();
  if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).then(follow, () => {
    /* Without it everything works online; there is nothing the person could do about it. */
  });
}

/** Puts the newer copy to use and opens the page from it. What is kept on the device stays. */
export async function putNewerCopyToUse(): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration();
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  registration?.waiting?.postMessage('use-new-version');
}

/** A browser that is told to take no workers may give none and say nothing. */
function follow(registration: ServiceWorkerRegistration | undefined): void {
  if (registration === undefined) return;
  const look = (): void => set({ copy: registration.waiting && registration.active ? 'newer' : registration.active ? 'kept' : registration.installing ? 'coming' : 'none' });
  const watch = (): void => { registration.installing?.addEventListener('statechange', look); look(); };
  registration.addEventListener('updatefound', watch);
  watch();
}

function set(change: Partial<OfflineCopy>): void {
  now = { ...now, ...change };
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
