import type { ProofJudged } from '@/lib/measuring';
import type { VerdictWord } from '../../_parts/signs';
import './before-after.css';

export interface WhatIsLeftProps {
  readonly judged: ProofJudged | undefined;
  /** Titles of what is still there. */
  readonly looks: readonly string[];
  readonly verdict: VerdictWord;
  readonly unit: string;
  readonly figure: (value: number) => string;
}

/** What the proof leaves open: places beyond the limit, and symptoms that are still there. */
export function WhatIsLeft({ judged, looks, verdict, unit, figure }: WhatIsLeftProps) {
  const left = judged?.left ?? [];
  return (
    <ul className="left-list">
      {left.length === 0 && looks.length === 0 && <li>{verdict === 'cured' ? 'Nothing beyond the limit. One good print does not prove much: watch the next three.' : 'No reading and no look names what is left. Look at each symptom again on the next print.'}</li>}
      {left.map((place) => <li key={place.place}><b>{capital(place.place)}, {figure(place.after.value)} ± {figure(place.after.plusMinus)} {unit},</b> is still beyond the limit{place.keeps === 'unsure' ? ', though within its uncertainty' : ''}.</li>)}
      {looks.map((title) => <li key={title}><b>{title}:</b> still there.</li>)}
    </ul>
  );
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
