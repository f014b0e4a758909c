import { rowsAt, textAt, valueAt, withAt, type Place, type Sheet } from './sheet';

/** What can be chosen for the bends of a branch, in one word each. */
export const BEND_CHOICES: readonly { readonly value: string; readonly word: string }[] = [
  { value: '0-none', word: 'none' },
  ...[1, 2, 3, 4].flatMap((count) => [{ value: `${count}-mitre`, word: `${count} sharp` }, { value: `${count}-radius`, word: `${count} rounded` }]),
];

/** The choice that the sheet holds at a place; undefined when nothing is said, or when bends of both kinds are mixed. */
export function bendsAt(sheet: Sheet, place: Place): string | undefined {
  const bends = rowsAt(sheet, place);
  const kinds = new Set(bends.map((_, index) => textAt(bends, [index, 'kind']) || 'mitre'));
  if (bends.length === 0) return isSaid(sheet, place) ? '0-none' : undefined;
  return kinds.size === 1 ? `${bends.length}-${[...kinds].join('')}` : undefined;
}

/** The sheet with right-angle bends as chosen; without a choice the bends are taken out. */
export function withBends(sheet: Sheet, place: Place, choice: string | undefined): Sheet {
  if (choice === undefined) return withAt(sheet, place, '');
  const [count = '0', kind] = choice.split('-');
  const bend = kind === 'radius' ? { kind, angle: '90°', radius: '12 mm' } : { kind: 'mitre', angle: '90°' };
  return withAt(sheet, place, Array.from({ length: Number(count) }, () => bend));
}

function isSaid(sheet: Sheet, place: Place): boolean {
  return Array.isArray(valueAt(sheet, place));
}
