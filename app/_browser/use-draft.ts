'use client';
import { useCallback, useEffect, useState } from 'react';

/**
 * What somebody is in the middle of writing, kept for this visit under a name: a reload, a way back or a look at another page
 * loses nothing. Undefined until something was written. `put(undefined)` throws it away, once it has gone where it belongs.
 */
export function useDraft<T>(name: string): readonly [T | undefined, (draft: T | undefined) => void] {
  const [draft, setDraft] = useState<{ readonly of: string; readonly draft: T | undefined }>();
  useEffect(() => {
    // After the page is there: while it is being built there is no device to ask.
    const timer = setTimeout(() => {
      const kept = recall(name) as T | undefined;
      if (kept !== undefined) setDraft({ of: name, draft: kept });
    });
    return () => clearTimeout(timer);
  }, [name]);
  const put = useCallback((next: T | undefined): void => {
    setDraft({ of: name, draft: next });
    keep(name, next);
  }, [name]);
  return [draft?.of === name ? draft.draft : undefined, put];
}

const keyOf = (name: string): string => `leeward.draft ${name}`;

function recall(name: string): unknown {
  try {
    const text = sessionStorage.getItem(keyOf(name));
    return text === null ? undefined : (JSON.parse(text) as unknown);
  } catch {
    return undefined;
  }
}

function keep(name: string, draft: unknown): void {
  try {
    if (draft === undefined) sessionStorage.removeItem(keyOf(name));
    else sessionStorage.setItem(keyOf(name), JSON.stringify(draft));
  } catch {
    /* storage forbidden: the draft lasts as long as the page */
  }
}
