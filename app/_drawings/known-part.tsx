import type { Drawing as DrawingSpec } from '@/lib/knowledge';
import { Drawing } from './drawing';

/** One fact of the case, as far as a picture can show it. */
export interface KnownPartFact {
  readonly number: number;
  readonly about: string;
  readonly shape: 'seen' | 'measured' | 'not-seen' | 'cant-tell' | 'casebook';
  readonly faces?: string;
  readonly drawing?: DrawingSpec | undefined;
}

/** The two views with most to show: what was seen, joined into one stack where the faults can stand together. */
export function KnownPart({ facts }: { readonly facts: readonly KnownPartFact[] }) {
  const seen = facts.filter((fact) => fact.shape === 'seen' && fact.drawing !== undefined);
  const views = joinedViews(seen).slice(0, 2);
  if (views.length === 0) return null;
  return (
    <div className="known-part">
      {views.map((view) => (
        <figure key={view.numbers.join()}>
          <Drawing spec={view.spec} width={144} height={128} size="step" />
          <figcaption className="label">{view.numbers.map((number) => `(${number})`).join(' ')}{'curl' in view.spec ? ' curl × 2' : ''}</figcaption>
        </figure>
      ))}
    </div>
  );
}

interface View {
  readonly spec: DrawingSpec;
  readonly numbers: readonly number[];
}

/** Stacks of the same shape are drawn as one with all their faults; other drawings stand alone. */
function joinedViews(facts: readonly KnownPartFact[]): View[] {
  const views: View[] = [];
  for (const fact of facts) {
    const { drawing } = fact;
    if (!drawing) continue;
    const same = views.findIndex((view) => view.spec.show === 'stack' && drawing.show === 'stack' && (view.spec.shape ?? 'block') === (drawing.shape ?? 'block'));
    const earlier = views[same];
    if (earlier && drawing.show === 'stack') views[same] = { spec: { ...earlier.spec, ...drawing }, numbers: [...earlier.numbers, fact.number] };
    else views.push({ spec: drawing, numbers: [fact.number] });
  }
  return views;
}
