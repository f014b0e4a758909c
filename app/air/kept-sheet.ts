'use client';
import { useEffect, useState } from 'react';
import type { Sheet } from './sheet';

const KEPT = 'leeward.air-path';

/** The air path that was last written without a case; undefined while looking, and when there is none. */
export function useKeptSheet(): Sheet | undefined {
  const [sheet, setSheet] = useState<Sheet>();
  useEffect(() => {
    const timer = setTimeout(() => {
      try {
        const text = localStorage.getItem(KEPT);
        if (text !== null) setSheet(JSON.parse(text) as Sheet);
      } catch {
        /* nothing kept, or not readable: begin anew */
      }
    }, 0);
    return () => clearTimeout(timer);
  }, []);
  return sheet;
}

/** Keeps the air path on this device for the next visit. */
export function keepSheet(sheet: Sheet): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(sheet));
  } catch {
    /* storage forbidden: the sheet lasts as long as the page */
  }
}
