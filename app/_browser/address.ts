'use client';
import { useSyncExternalStore } from 'react';

/** One word of the address after "?", or null. Null while the page is being built, so that the page is there at once. */
export function useAddressWord(name: string): string | null {
  return useSyncExternalStore(subscribe, () => new URLSearchParams(location.search).get(name), () => null);
}

function subscribe(listener: () => void): () => void {
  addEventListener('popstate', listener);
  return () => removeEventListener('popstate', listener);
}
