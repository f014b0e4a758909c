import type { Problem, Reading } from '@/lib/problems';
import { LONGEST_TABLE } from './read-fan-points';

/** Larger files are told without being read. Every sign takes one to three bytes, or two in UTF-16. */
export const LARGEST_TABLE_FILE = 4 * LONGEST_TABLE;

/** First bytes of files that a table is often kept in and that are no text. */
const PACKED: readonly { readonly is: string; readonly bytes: readonly number[] }[] = [
  { is: 'a spreadsheet or another packed file', bytes: [0x50, 0x4b, 0x03, 0x04] },
  { is: 'a spreadsheet of an old kind', bytes: [0xd0, 0xcf, 0x11, 0xe0] },
  { is: 'a PDF', bytes: [0x25, 0x50, 0x44, 0x46] },
  { is: 'a picture', bytes: [0x89, 0x50, 0x4e, 0x47] },
  { is: 'a picture', bytes: [0xff, 0xd8, 0xff] },
  { is: 'a compressed file', bytes: [0x1f, 0x8b] },
];

/**
 * The text of a file with a table, for `readFanPointsText`. `name` is what messages call it.
 * UTF-8 and, with its mark, UTF-16 are read; other bytes as Windows-1252, with a note. Told as problems: a file that is empty, larger
 * than `LARGEST_TABLE_FILE` bytes, or no text.
 * Worked: the bytes `66 6c 6f 77 20 28 6d b3 2f 68 29` are no UTF-8 and give `flow (m³/h)`.
 */
export function readTableFile(name: string, bytes: Uint8Array): Reading<string> {
  if (bytes.length > LARGEST_TABLE_FILE) return refused({ code: 'too-large', level: 'stop', where: name, ...tooLarge(bytes.length) });
  const packed = PACKED.find((kind) => kind.bytes.every((byte, k) => bytes[k] === byte));
  if (packed !== undefined) return refused({ code: 'no-text', level: 'stop', where: name, what: `This is ${packed.is}, not text.`, ...TEXT });
  const { text, problems } = decoded(name, bytes);
  if (text.trim() === '') return refused({ code: 'empty', level: 'stop', where: name, what: 'Nothing stands in this file.', ...TEXT, next: 'Choose the file with the table, or type the table into the box.' });
  // Control signs other than tab and line ends stand in no table.
  // eslint-disable-next-line no-control-regex
  if (/[\u0000-\u0008\u000e-\u001f]/u.test(text)) return refused({ code: 'no-text', level: 'stop', where: name, what: 'This file holds something other than text.', ...TEXT });
  return { value: text, problems };
}

/** What to say of a file of so many bytes, before it is read. */
export function tooLarge(bytes: number): Pick<Problem, 'what' | 'allowed' | 'next'> {
  return { what: `The file has ${bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${Math.round(bytes / 1e6)} MB`}; the table of a fan has a few.`, allowed: `up to ${Math.round(LARGEST_TABLE_FILE / 1000)} kB`, next: 'Choose the file with the table, or copy only its rows into the box.' };
}

const TEXT = { allowed: 'a table as text, .csv or .txt', next: 'Open it in its own program and save the table as CSV, or copy its rows into the box.' } as const;

function refused(problem: Problem): Reading<string> {
  return { value: undefined, problems: [problem] };
}

function decoded(name: string, bytes: Uint8Array): { readonly text: string; readonly problems: readonly Problem[] } {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), problems: [] };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), problems: [] };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), problems: [] };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), problems: [{ code: 'other-encoding', level: 'note', where: name, what: 'Its letters are not written as UTF-8; they were read as Windows-1252.', next: 'Look whether the units in the first line are right.' }] };
  }
}
