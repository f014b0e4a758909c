/** Small signs that stand beside a word: tick, cross, dashed ring, caution, the four verdict marks. Never alone. */
export function Tick() {
  return <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2.4"><path d="M2 8.5l4 4 8-9" /></svg>;
}

export function Cross() {
  return <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2.4"><path d="M3 3l10 10M13 3L3 13" /></svg>;
}

export function DashedRing() {
  return <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2" strokeDasharray="3 2.2"><circle cx="8" cy="8" r="6" /></svg>;
}

export function CautionSign() {
  return (
    <svg width="24" height="22" viewBox="0 0 24 22" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="round">
      <path d="M12 2L22.5 20.5H1.5Z" /><path d="M12 8.5v6" /><path d="M12 16.6v1.6" />
    </svg>
  );
}

export function Chevron({ open }: { readonly open: boolean }) {
  return <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2.2"><path d={open ? 'M2 4.5l5 5 5-5' : 'M4.5 2l5 5-5 5'} /></svg>;
}

export type VerdictWord = 'cured' | 'better' | 'no-change' | 'worse';

export const VERDICT_WORDS: Readonly<Record<VerdictWord, string>> = { cured: 'cured', better: 'better, with something left', 'no-change': 'no change', worse: 'worse' };

/** Full circle cured, three-quarter circle better, empty circle no change, crossed circle worse. */
export function VerdictSign({ verdict }: { readonly verdict: VerdictWord }) {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2">
      <circle cx="9" cy="9" r="7.5" {...(verdict === 'cured' ? { fill: 'currentColor' } : {})} />
      {verdict === 'better' && <path d="M9 9V1.5A7.5 7.5 0 1 1 1.5 9Z" fill="currentColor" stroke="none" />}
      {verdict === 'worse' && <path d="M4 4l10 10M14 4L4 14" />}
    </svg>
  );
}
