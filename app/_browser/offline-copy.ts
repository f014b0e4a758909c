'use client';

/** Registers the worker that keeps a copy of the whole site on this device, so that it opens in the shed too. */
export function startOfflineCopy(): void {
  if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).catch(() => {
    /* Without it everything works online; there is nothing the person could do about it. */
  });
}
