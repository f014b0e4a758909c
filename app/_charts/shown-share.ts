/** A chance as people read it: whole per cent, and never a false 0 or 100. shownShare(0.584) is "58 %"; 0.004 is "<1 %". */
export function shownShare(share: number): string {
  return `${bareShare(share)}\u202F%`;
}

/** The same without its sign, for ranges. */
export function bareShare(share: number): string {
  if (share > 0 && share < 0.01) return '<1';
  if (share < 1 && share > 0.99) return '>99';
  return String(Math.round(share * 100));
}

/** "44–71" for 0.44 to 0.71, "92–99.4" for 0.92 to 0.994: near the ends with one decimal, and never a false 0 or 100. */
export const shareRange = (low: number, high: number): string => `${rangeEnd(low)}–${rangeEnd(high)}`;

/** The same where the band may not have been reckoned yet: nothing while both ends are the chance itself. */
export const bandWords = ({ low, high }: { readonly low: number; readonly high: number }): string => (low < high ? shareRange(low, high) : '');

function rangeEnd(share: number): string {
  const isNearAnEnd = (share > 0 && share < 0.01) || (share > 0.99 && share < 1);
  return isNearAnEnd ? Math.min(99.9, Math.max(0.1, share * 100)).toFixed(1) : String(Math.round(share * 100));
}
