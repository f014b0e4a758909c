import { wordWidth } from './word-width';

/** Breaks a sentence into lines that fit `width` px; a single word that is wider stays whole on its line. */
export function wrapWords(sentence: string, width: number, size = 14): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of sentence.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && wordWidth(longer, size) > width) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return line === '' ? lines : [...lines, line];
}
