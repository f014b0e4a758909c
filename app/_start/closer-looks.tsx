'use client';
import { useEffect, useId, useState } from 'react';
import type { CaseFile, Observation } from '@/lib/cases';
import type { Knowledge, KnownSymptom } from '@/lib/knowledge';
import { ChoiceOfThree } from '../_parts/choice-of-three';

/** Closer looks asked for at once; up to one more is not worth a press. */
const ASKED = 3;

export interface CloserLooksProps {
  /** The symptom that was seen. */
  readonly of: KnownSymptom;
  readonly told: (symptom: string) => Observation['state'] | undefined;
  readonly onChoose: (symptom: string, state: Observation['state'] | undefined) => void;
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
}

/** Closer looks that are worth taking once something was seen: the few that say most of the cause, the others one press away. */
export function CloserLooks({ of, told, onChoose, file, knowledge }: CloserLooksProps) {
  const [all, setAll] = useState(false);
  const list = useId();
  const order = useOrder(of, file, knowledge);
  const few = of.details.length <= ASKED + 1;
  if (!few && !order) return <p className="label closer-wait" role="status">One moment: the looks that tell most.</p>;
  const ordered = few ? of.details : (order ?? []);
  const asked = ordered.filter((id, place) => few || all || place < ASKED || told(id) !== undefined);
  return (
    <div className="closer">
      <ul id={list}>
        {asked.flatMap((id) => knowledge.symptoms[id] ?? []).map((look) => <li key={look.id}><span>{look.title}</span><ChoiceOfThree about={look.title} chosen={told(look.id)} onChoose={(state) => onChoose(look.id, state)} /></li>)}
      </ul>
      {asked.length < ordered.length && <button type="button" className="link" aria-controls={list} onClick={() => setAll(true)}>{ordered.length - asked.length} more closer looks</button>}
    </div>
  );
}

/**
 * The closer looks with the most telling first. Reckoned once, when the symptom is ticked: a question must not jump away
 * under the finger. The rooms that reckon are fetched then; without them the looks stand in the order of the page.
 */
function useOrder(of: KnownSymptom, file: CaseFile, knowledge: Knowledge): readonly string[] | undefined {
  const [order, setOrder] = useState<readonly string[]>();
  useEffect(() => {
    if (order || of.details.length <= ASKED + 1) return;
    let wanted = true;
    import('@/lib/diagnosis').then(
      ({ closerLooks, diagnose }) => {
        if (!wanted) return;
        const result = diagnose(file, knowledge, { copies: 0 });
        const best = result.kind === 'diagnosis' ? closerLooks(result, of.id, file, knowledge).map((row) => row.symptom) : of.details;
        setOrder([...best, ...of.details.filter((id) => !best.includes(id))]);
      },
      () => { if (wanted) setOrder(of.details); },
    );
    return () => { wanted = false; };
  }, [of, file, knowledge, order]);
  return order;
}
