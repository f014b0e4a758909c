import { GRADES, type Grade, type KnownSymptom } from '@/lib/knowledge';

export interface ChoiceOfGradeProps {
  readonly about: string;
  /** What is seen at each grade, in the words of the symptom's page. */
  readonly words: NonNullable<KnownSymptom['grades']>;
  readonly chosen: Grade | undefined;
  /** Choosing the chosen one again clears it: undefined. */
  readonly onChoose: (grade: Grade | undefined) => void;
}

/** How bad it is, mildest first: three cells to tap. Nothing chosen costs only information. */
export function ChoiceOfGrade({ about, words, chosen, onChoose }: ChoiceOfGradeProps) {
  return (
    <div className="grade">
      <span className="label">How bad</span>
      <div className="choice" role="group" aria-label={`How bad: ${about}`}>
        {GRADES.map((grade) => <button key={grade} type="button" aria-pressed={chosen === grade} onClick={() => onChoose(chosen === grade ? undefined : grade)}>{words[grade]}</button>)}
      </div>
    </div>
  );
}
