'use client';
import Link from 'next/link';
import type { Credibility, FanFacts } from '@/lib/airflow';
import type { Knowledge } from '@/lib/knowledge';
import { formatRange, type UnitSymbol } from '@/lib/units';
import { FitWidth } from '../_parts/fit-width';
import { ClaimLine } from './claim-line';

export interface ClaimCheckProps {
  /** What the fan is called, and what it claims. */
  readonly name: string;
  readonly fan: FanFacts;
  readonly credibility: Credibility;
  /** A trusted data sheet of the same size stands beside it. */
  readonly isHeldAgainstSheet: boolean;
  readonly knowledge: Knowledge | undefined;
  readonly unit: UnitSymbol;
  /** A fan on offer, which has a place for a trusted sheet beside it; false for the fan that is there. */
  readonly isOffered: boolean;
  /** Reckon with the band instead of the claim, and back; undefined where the page cannot. */
  readonly onReckon: ((withBand: boolean) => void) | undefined;
}

const VERDICTS: Readonly<Record<Credibility['verdict'], string>> = {
  credible: 'Credible', doubtful: 'Doubtful', 'not-credible': 'Not credible', impossible: 'Impossible', 'cannot-say': 'Nothing can be said',
};

/** Is an advertised flow believable: the band on a line, a word, the reasons on request, and what would settle it. */
export function ClaimCheck({ name, fan, credibility, isHeldAgainstSheet, isOffered, knowledge, unit, onReckon }: ClaimCheckProps) {
  const { band, verdict, sentence, reasons, settledBy } = credibility;
  const check = knowledge?.checks[settledBy];
  const method = check?.methods[0];
  const claim = fan.freeFlow;
  return (
    <section className="region claim" aria-label={`Claim of ${name}`}>
      <h2>Is the claim credible? {name}</h2>
      <p className="claim-verdict"><b>{VERDICTS[verdict]}.</b> {sentence}{band && <> The band: <span className="nowrap">{formatRange(band.low, band.high, unit)}</span>{unit !== 'CFM' && <> <span className="nowrap">({formatRange(band.low, band.high, 'CFM')})</span></>}.</>}</p>
      {band && claim.basis === 'given' && <FitWidth usual={640}>{(width) => <ClaimLine claim={claim.value} band={band} unit={unit} width={Math.min(width, 760)} />}</FitWidth>}
      {onReckon && (fan.expectedFlow !== undefined
        ? <p className="claim-use"><b>The page reckons with this band, not with the claim.</b> <button type="button" className="link" onClick={() => onReckon(false)}>Reckon with the claim all the same</button></p>
        : band !== undefined && <p className="claim-use not-printed"><button type="button" className="button" onClick={() => onReckon(true)}>Reckon with this band</button> <span className="label">Instead of the claim; it can be taken back.</span></p>)}
      <details className="sheet-more">
        <summary>Why</summary>
        <ul className="claim-reasons">
          {reasons.map((reason) => <li key={reason}>{reason}</li>)}
          <li className="quiet">The laws: flow grows with speed; it grows with electrical power to an exponent between a third and two thirds; and no fan moves air with more power than it draws.</li>
          {!isHeldAgainstSheet && <li className="quiet">{band ? 'It is held against published ratings of this size. ' : ''}A trusted data sheet of the same size makes this sharper{isOffered && onReckon ? '; it has its place beside the offer' : ''}.</li>}
        </ul>
      </details>
      <p>What settles it: {method === undefined ? 'measuring its free flow.' : <Link href={`/bench/${method}`}>{check?.asks ?? 'measure its free flow'}</Link>}</p>
    </section>
  );
}
