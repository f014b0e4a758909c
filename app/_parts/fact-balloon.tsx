import type { BalloonShape } from '../_case/fact-words';

const WORDS: Readonly<Record<BalloonShape, string>> = { seen: 'seen', measured: 'measured', 'not-seen': 'not seen', 'cant-tell': 'can’t tell', casebook: 'from the casebook' };

/** The number of a fact of this case, in the shape of its kind. */
export function FactBalloon({ number, shape, size = 26 }: { readonly number: number | string; readonly shape: BalloonShape; readonly size?: number }) {
  return (
    <svg className="balloon" width={size} height={size} viewBox="0 0 26 26" role="img" aria-label={`Fact ${number}, ${WORDS[shape]}`}>
      {shape === 'measured' || shape === 'casebook' ? <rect className="balloon-line" x="1.5" y="1.5" width="23" height="23" /> : <circle className="balloon-line" cx="13" cy="13" r="11.5" {...(shape === 'cant-tell' ? { strokeDasharray: '3 2.5' } : {})} />}
      {shape === 'not-seen' && <path className="balloon-strike" d="M4.5 21.5L21.5 4.5" />}
      <text className="balloon-text" x="13" y="18" textAnchor="middle">{number}</text>
    </svg>
  );
}
