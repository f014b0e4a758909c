import { MATERIALS, type Material } from '@/lib/knowledge';

/* "filled" is no name that anybody writes in capitals. */
const NAMES = MATERIALS.filter((name) => name === name.toUpperCase());

/**
 * The plastic that somebody's words name, as a word of its own in capitals; of several the longest name, and none where two are equally
 * long: one of them is then the one that works. Names of two letters stand for much else, so that no sign may be tied to them ("PC-1").
 */
export function plasticIn(words: string): Material | undefined {
  const found = NAMES.filter((name) => isNamed(name, words));
  const longest = found.filter((name) => name.length === Math.max(...found.map((each) => each.length)));
  return longest.length === 1 ? longest[0] : undefined;
}

function isNamed(name: Material, words: string): boolean {
  const near = name.length > 2 ? '[\\p{L}\\p{N}]' : '[\\p{L}\\p{N}+/_-]';
  return new RegExp(`(?<!${near})${name}(?!${near})`, 'u').test(words);
}
