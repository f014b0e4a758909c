import type { ReactNode } from 'react';
import type { Size } from './frame';

export interface SheetProps {
  readonly width: number;
  readonly height: number;
  /** What the picture says to someone who cannot see it. */
  readonly label: string;
  /** True where the words beside it say the same: then it is left out for screen readers. */
  readonly decorative?: boolean | undefined;
  readonly size?: Size | undefined;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** One sheet with a drawing or a chart, at its own size in px, never scaled. */
export function Sheet({ width, height, label, decorative = false, size = 'figure', className, children }: SheetProps) {
  const names = `d-sheet${size === 'row' ? ' d-row' : ''}${className === undefined ? '' : ` ${className}`}`;
  const spoken = decorative ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label };
  return (
    <svg xmlns="http://www.w3.org/2000/svg" className={names} width={width} height={height} viewBox={`0 0 ${width} ${height}`} {...spoken}>
      {children}
    </svg>
  );
}
