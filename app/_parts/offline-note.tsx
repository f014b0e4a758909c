'use client';
import { putNewerCopyToUse, useOfflineCopy, type OfflineCopy } from '../_browser/offline-copy';

/** What of the site works without a network, as it is now; it promises nothing before the copy is whole. */
export function OfflineNote() {
  const state = useOfflineCopy();
  return (
    <>
      <span className="top-note">{noteWords(state)}</span>
      {state.copy === 'newer' && <button type="button" className="link" onClick={() => void putNewerCopyToUse()}>Use the new version</button>}
    </>
  );
}

/** The one word that a narrow header has room for. */
export function OfflineSign() {
  const { isOnline } = useOfflineCopy();
  return <span className="top-offline" role="status">{isOnline ? '' : 'Offline'}</span>;
}

/** "Works offline. Nothing leaves this device." once the copy is whole. */
export function noteWords({ copy, isOnline }: OfflineCopy): string {
  const kept = copy === 'kept' || copy === 'newer';
  if (!isOnline) return kept ? 'You are offline. Everything works.' : 'You are offline. What is open works; other pages may not.';
  if (kept) return 'Works offline. Nothing leaves this device.';
  return copy === 'coming' ? 'Storing a copy for use offline. Nothing leaves this device.' : 'Nothing leaves this device.';
}
