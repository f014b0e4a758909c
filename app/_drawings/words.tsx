import type { ReactNode } from 'react';
import { px } from './frame';

export type Anchor = 'start' | 'middle' | 'end';

export interface WordsProps {
  readonly x: number;
  readonly y: number;
  readonly anchor?: Anchor;
  readonly tone?: 'ink' | 'ink2' | 'accent' | 'paper';
  readonly strong?: boolean;
  /** Text size, px; 14 is the floor everywhere. */
  readonly size?: 14 | 15 | 16;
  /** A rim in the ground's colour, where words stand on lines. */
  readonly halo?: boolean | 'wash';
  readonly className?: string;
  readonly children: ReactNode;
}

/** Words in a drawing, placed in px, base line at y. They are never scaled. */
export function Words({ x, y, anchor = 'start', tone = 'ink', strong = false, size = 14, halo = false, className, children }: WordsProps) {
  const names = ['d-text'];
  if (size !== 14) names.push(`d-text-${size}`);
  if (tone !== 'ink') names.push(`d-text-${tone}`);
  if (strong) names.push('d-strong');
  if (halo !== false) names.push('d-halo');
  if (halo === 'wash') names.push('d-halo-wash');
  if (className !== undefined) names.push(className);
  return (
    <text className={names.join(' ')} x={px(x)} y={px(y)} textAnchor={anchor === 'start' ? undefined : anchor}>
      {children}
    </text>
  );
}
