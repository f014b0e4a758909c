import type { CaseFile, Observation } from '@/lib/cases';
import { plasticIn } from './plastic-in-words';

/** Letters that are kept of somebody's own words; the field takes no more either. */
const LONGEST = 2000;
const BETWEEN = '; ';

/**
 * The words of a case with those of one more search. Text that only goes on from an earlier one takes its place, text that adds nothing
 * is left out, and anything else is put behind what is there: "edges lift", then "edges lift up", then "layers moved" make
 * "edges lift up; layers moved".
 */
export function joinedWords(kept: string, heard: string): string {
  if (heard.trim() === '' || kept.startsWith(heard)) return kept;
  if (heard.startsWith(kept)) return heard.slice(0, LONGEST);
  const parts = kept.split(BETWEEN);
  if (parts.some((part) => part.startsWith(heard))) return kept;
  const at = parts.findIndex((part) => heard.startsWith(part));
  return (at < 0 ? [...parts, heard] : parts.with(at, heard)).join(BETWEEN).slice(0, LONGEST);
}

/** The words of a case after an answer: those of a search that led to nothing seen are kept only while there are none. */
export function wordsAfter(kept: string, heard: string, answer?: Observation['state']): string {
  return answer === 'seen' || kept === '' ? joinedWords(kept, heard) : kept;
}

/** The case with the plastic that its words name, unless one was told already. */
export function withPlasticOfWords(file: CaseFile): CaseFile {
  const material = file.print.material ?? plasticIn(file.words);
  return material === undefined || material === file.print.material ? file : { ...file, print: { ...file.print, material } };
}
