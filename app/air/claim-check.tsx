'use client';
import Link from 'next/link';
import type { CandidateFacts, Credibility } from '@/lib/airflow';
import type { Knowledge } from '@/lib/knowledge';
import { formatRange, type UnitSymbol } from '@/lib/units';
import { FitWidth } from '../_parts/fit-width';
import { ClaimLine } from './claim-line';

export interface ClaimCheckProps {
  readonly candidate: CandidateFacts;
  readonly credibility: Credibility;
  readonly knowledge: Knowledge | undefined;
  readonly unit: UnitSymbol;
  /** Reckon with the band instead of the claim, and back. */
  readonly onReckon: (withBand: boolean) => void;
}

const VERDICTS: Readonly<Record<Credibility['verdict'], string>> = {
  credible: 'Credible', doubtful: 'Doubtful', 'not-credible': 'Not credible', impossible: 'Impossible', 'cannot-say': 'Nothing can be said',
};

/** Is an advertised flow believable: the band on a line, a word, the reasons on request, and what would settle it. */
export function ClaimCheck({ candidate, credibility, knowledge, unit, onReckon }: ClaimCheckProps) {
  const { band, verdict, sentence, reasons, settledBy } = credibility;
  const check = knowledge?.checks[settledBy];
  const method = check?.methods[0];
  const claim = candidate.fan?.freeFlow;
  return (
    <section className="region claim" aria-label={`Claim of ${candidate.name}`}>
      <h2>Is the claim credible? {candidate.name}</h2>
      <p className="claim-verdict"><b>{VERDICTS[verdict]}.</b> {sentence}{band && <> The band: <span className="nowrap">{formatRange(band.low, band.high, unit)}</span>{unit !== 'CFM' && <> <span className="nowrap">({formatRange(band.low, band.high, 'CFM')})</span></>}.</>}</p>
      {band && claim?.basis === 'given' && <FitWidth usual={640}>{(width) => <ClaimLine claim={claim.value} band={band} unit={unit} width={Math.min(width, 760)} />}</FitWidth>}
      {candidate.fan?.expectedFlow !== undefined
        ? <p className="claim-use"><b>The page reckons with this band, not with the claim.</b> <button type="button" className="link" onClick={() => onReckon(false)}>Go back to the claim</button></p>
        : band !== undefined && candidate.trusted !== undefined && <p className="claim-use not-printed"><button type="button" className="button" onClick={() => onReckon(true)}>Reckon with this band</button> <span className="label">Instead of the claim; it can be taken back.</span></p>}
      <details className="sheet-more">
        <summary>Why</summary>
        <ul className="claim-reasons">
          {reasons.map((reason) => <li key={reason}>{reason}</li>)}
          <li className="quiet">The laws: flow grows with speed; it grows with electrical power to an exponent between a third and two thirds; and no fan moves air with more power than it draws.</li>
          {candidate.trusted === undefined && <li className="quiet">{band ? 'It is held against published ratings of this size. ' : ''}A trusted data sheet of the same size makes this sharper; it has its place beside the offer.</li>}
        </ul>
      </details>
      <p>What settles it: {method === undefined ? 'measuring its free flow.' : <Link href={`/bench/${method}`}>{check?.asks ?? 'measure its free flow'}</Link>}</p>
    </section>
  );
}
