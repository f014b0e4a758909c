import { pathOn } from './frame';
import type { Frame } from './frame';

/** Cut: material cut by the section. Lee: no air, or beyond the limit. Infill: seen in a break. Minor: second part of a bar. */
export type HatchKind = 'cut' | 'lee' | 'infill' | 'minor';

const pitch: Readonly<Record<HatchKind, number>> = { cut: 6, lee: 5, infill: 11, minor: 8 };
const slope: Readonly<Record<HatchKind, number>> = { cut: 45, lee: -45, infill: 45, minor: 45 };

export const hatchId = (id: string, kind: HatchKind): string => `${id}-${kind}`;

/** The patterns of one drawing. Ids carry the drawing's own id, so that many drawings share a page. */
export function Hatches({ id, kinds }: { readonly id: string; readonly kinds: readonly HatchKind[] }) {
  return (
    <defs>
      {kinds.map((kind) => (
        <pattern key={kind} id={hatchId(id, kind)} width={pitch[kind]} height={pitch[kind]} patternUnits="userSpaceOnUse" patternTransform={`rotate(${slope[kind]})`}>
          <path className={`d-line d-hatch-${kind}`} d={kind === 'infill' ? `M0 5.5H11M5.5 0V11` : `M${pitch[kind] / 2} -1V${pitch[kind] + 1}`} />
        </pattern>
      ))}
    </defs>
  );
}

/** A hatched area; `d` in drawn units on a frame. The area itself has no outline: draw that over it. */
export function Hatched({ on, d, kind }: { readonly on: Frame; readonly d: string; readonly kind: HatchKind }) {
  return <HatchedPx id={on.id} d={pathOn(on, d)} kind={kind} />;
}

/** The same with `d` already in px. */
export function HatchedPx({ id, d, kind }: { readonly id: string; readonly d: string; readonly kind: HatchKind }) {
  return <path d={d} fill={`url(#${hatchId(id, kind)})`} />;
}
