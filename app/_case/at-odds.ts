import type { CaseFile, Finding } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';

/** A word of the case that says that something is so: a symptom that was seen, or a check that came out yes. */
export interface Told {
  readonly kind: 'symptom' | 'check';
  readonly about: string;
  readonly round: number;
}

/** Words of a case that do not go together as they stand, whatever the causes are. */
export type AtOdds =
  /** Both were told in one round, and only one can be so. */
  | { readonly kind: 'exclude'; readonly one: Told; readonly other: Told }
  /** A detail is seen and what it is a detail of is not: the detail counts for nothing meanwhile. */
  | { readonly kind: 'loose-detail'; readonly detail: Told; readonly whole: Told }
  /** A check was taken again in the same round and said something else: the first word gave way. */
  | { readonly kind: 'replaced'; readonly finding: Finding; readonly replaced: NonNullable<Finding['replaced']>; readonly far: boolean };

type Pages = Pick<Knowledge, 'symptoms' | 'checks'>;

/** What a case says against itself; nothing of a closed one. */
export function atOdds(file: Pick<CaseFile, 'observations' | 'findings' | 'state'>, knowledge: Pages): AtOdds[] {
  if (file.state === 'closed') return [];
  return [...exclusions(file, knowledge), ...looseDetails(file, knowledge), ...replacedFindings(file)];
}

function exclusions({ observations, findings }: Pick<CaseFile, 'observations' | 'findings'>, { symptoms, checks }: Pages): AtOdds[] {
  const told: Told[] = [
    ...observations.flatMap(({ symptom, state, round }): Told[] => (state === 'seen' ? [{ kind: 'symptom', about: symptom, round }] : [])),
    ...findings.flatMap(({ check, answer, round }): Told[] => (answer === 'yes' ? [{ kind: 'check', about: check, round }] : [])),
  ];
  return told.flatMap((one) => {
    const page = one.kind === 'symptom' ? symptoms[one.about] : checks[one.about];
    return (page?.notWith ?? []).flatMap((id): AtOdds[] => {
      const other = told.find(({ about, round }) => about === id && round === one.round);
      return other ? [{ kind: 'exclude', one, other }] : [];
    });
  });
}

function looseDetails({ observations }: Pick<CaseFile, 'observations'>, { symptoms }: Pages): AtOdds[] {
  const last = new Map([...observations].sort((a, b) => a.round - b.round).map((each) => [each.symptom, each]));
  return [...last.values()].flatMap((detail): AtOdds[] => {
    const whole = last.get(symptoms[detail.symptom]?.detailOf ?? '');
    // Gone in a later round, it took its details along.
    const isLoose = detail.state === 'seen' && whole?.state === 'not-seen' && whole.round <= detail.round;
    return !isLoose ? [] : [{ kind: 'loose-detail', detail: { kind: 'symptom', about: detail.symptom, round: detail.round }, whole: { kind: 'symptom', about: whole.symptom, round: whole.round } }];
  });
}

function replacedFindings({ findings }: Pick<CaseFile, 'findings'>): AtOdds[] {
  return findings.flatMap((finding): AtOdds[] => (finding.replaced === undefined ? [] : [{ kind: 'replaced', finding, replaced: finding.replaced, far: differByMore(finding, finding.replaced) }]));
}

/** Whether both cannot be readings of one value: further apart than both ± (95 %) together, in quadrature. Answers differ or do not. */
function differByMore({ result }: Pick<Finding, 'result'>, { result: before }: Pick<Finding, 'result'>): boolean {
  if (before === undefined || result?.unit !== before.unit) return true;
  return Math.abs(result.value - before.value) > Math.hypot(result.plusMinus, before.plusMinus);
}
