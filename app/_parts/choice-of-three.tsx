'use client';
import { Cross, DashedRing, Tick } from './signs';
import { whenPressed } from './when-pressed';

export type ThreeWay = 'seen' | 'not-seen' | 'cant-tell';

const WORDS: Readonly<Record<ThreeWay, string>> = { seen: 'Seen', 'not-seen': 'Not seen', 'cant-tell': 'Can’t tell' };

export interface ChoiceOfThreeProps {
  /** What is being answered, for screen readers. */
  readonly about: string;
  readonly chosen: ThreeWay | undefined;
  /** Choosing the chosen one again clears it: undefined. */
  readonly onChoose: (choice: ThreeWay | undefined) => void;
  /** What will be chosen when the cell being pressed is let go. */
  readonly onPress?: (choice: ThreeWay | undefined) => void;
  readonly words?: Readonly<Record<ThreeWay, string>>;
}

/** Seen, not seen, can't tell: equal cells with sign and word. */
export function ChoiceOfThree({ about, chosen, onChoose, onPress, words = WORDS }: ChoiceOfThreeProps) {
  return (
    <div className="choice" role="group" aria-label={about}>
      {(['seen', 'not-seen', 'cant-tell'] as const).map((choice) => {
        const next = chosen === choice ? undefined : choice;
        return (
          <button key={choice} type="button" aria-pressed={chosen === choice} {...whenPressed(() => onPress?.(next))} onClick={() => onChoose(next)}>
            {choice === 'seen' ? <Tick /> : choice === 'not-seen' ? <Cross /> : <DashedRing />}
            {words[choice]}
          </button>
        );
      })}
    </div>
  );
}
