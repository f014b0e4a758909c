'use client';
import type { CaseFile } from '@/lib/cases';

/** An address that holds the whole case after "#": it is never sent to a server. */
export async function caseLink(file: CaseFile): Promise<string> {
  const packed = await new Response(new Blob([JSON.stringify(file)]).stream().pipeThrough(new CompressionStream('deflate-raw'))).arrayBuffer();
  const letters = btoa(String.fromCharCode(...new Uint8Array(packed))).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
  return `${location.origin}/casebook/#case=${letters}`;
}

/** Largest case text that a link may unpack to, in bytes: a link from somebody else must not fill the memory. */
const LARGEST = 2_000_000;

/** The text of the case in a link's fragment; undefined when there is none, and an empty text when it cannot be unpacked. */
export async function caseTextOfLink(fragment: string): Promise<string | undefined> {
  const letters = /^#case=([A-Za-z0-9_-]+)$/.exec(fragment)?.[1];
  if (letters === undefined) return undefined;
  try {
    const bytes = Uint8Array.from(atob(letters.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
    const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
    const parts: Uint8Array[] = [];
    let size = 0;
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      size += next.value.byteLength;
      if (size > LARGEST) return '';
      parts.push(next.value);
    }
    return await new Blob(parts as BlobPart[]).text();
  } catch {
    return '';
  }
}
