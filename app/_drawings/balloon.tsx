import { px } from './frame';
import { Words } from './words';

/** How a fact is known; each has its own outline, so colour is never needed to tell them apart. */
export type BalloonKind = 'seen' | 'measured' | 'not-seen' | 'cant-tell' | 'casebook' | 'option' | 'chosen-option';

export const balloonWords: Readonly<Record<BalloonKind, string>> = {
  seen: 'seen', measured: 'measured', 'not-seen': 'not seen', 'cant-tell': 'can’t tell', casebook: 'from the casebook', option: 'option', 'chosen-option': 'recommended option',
};

/** A numbered balloon, 24 px, placed by its centre (px), for use inside a drawing. */
export function Balloon({ x, y, kind, label }: { readonly x: number; readonly y: number; readonly kind: BalloonKind; readonly label: string | number }) {
  const square = kind === 'measured' || kind === 'casebook';
  const chosen = kind === 'chosen-option';
  return (
    <g>
      {square ? (
        <rect className="d-line d-edge d-fill-paper" x={px(x - 11.3)} y={px(y - 11.3)} width={22.6} height={22.6} />
      ) : (
        <circle className={`d-line ${chosen ? 'd-accent-thin d-fill-accent' : 'd-edge d-fill-paper'}`} cx={px(x)} cy={px(y)} r={11.3} strokeDasharray={kind === 'cant-tell' ? '3.2 2.72' : undefined} />
      )}
      <Words x={x} y={y + 5} anchor="middle" strong tone={chosen ? 'paper' : 'ink'}>{label}</Words>
      {kind === 'not-seen' && <path className="d-line d-edge" d={`M${px(x - 11)} ${px(y + 11)}L${px(x + 11)} ${px(y - 11)}`} />}
    </g>
  );
}

/** The same as a small drawing of its own, for lists and running text. */
export function BalloonMark({ kind, label }: { readonly kind: BalloonKind; readonly label: string | number }) {
  return (
    <svg className="d-sheet" role="img" aria-label={`${label}, ${balloonWords[kind]}`} width={26} height={26} viewBox="0 0 26 26">
      <Balloon x={13} y={13} kind={kind} label={label} />
    </svg>
  );
}
