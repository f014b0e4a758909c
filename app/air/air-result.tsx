'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { Fragment, memo } from 'react';
import { nothingEntered, type AirOption, type AirPathResult, type AirUnknown } from '@/lib/airflow';
import type { Knowledge } from '@/lib/knowledge';
import { formatMinutes, formatRange, preferredUnit } from '@/lib/units';
import { shownShare } from '../_charts';
import { useKnowledge } from '../_browser/knowledge';
import { usePreferences } from '../_browser/preferences';
import { AirTables } from './air-tables';
import { alsoChanged, fansToday, flowUnitOf, remedyFor, worthMeasuring, type LetteredOption } from './air-views';
import { ClaimCheck } from './claim-check';
import { ElectricalPoints, electricalVerdict } from './electrical-points';
import { FirstSizes } from './first-sizes';
import { OptionsList } from './options-list';
import { ReadingsChanged } from './readings-changed';
import { withAt, type Sheet } from './sheet';

export interface AirResultProps {
  readonly result: AirPathResult;
  readonly letters: readonly LetteredOption[];
  readonly chosen: LetteredOption | undefined;
  readonly fileOpen: boolean;
  readonly onPick: (id: string) => void;
  /** What leads back to the sheet; the same functions every time, or everything below is drawn anew at each stroke of a key. */
  readonly hands: SheetHands;
}

/** Ways from the results to the sheet and the case. */
export interface SheetHands {
  readonly edit: (change: (sheet: Sheet) => Sheet) => void;
  readonly choose: (option: AirOption, remedies: { readonly remedy: string; readonly also: readonly string[] }, why: string) => Promise<void>;
  readonly goTo: (where: string) => void;
}

/** Drawn anew only when something new was reckoned. What follows from the path: where the limit is, the changes, what to measure first, and what a new fan must fit. */
export const AirResult = memo(function AirResult({ result, letters, chosen, fileOpen, onPick, hands }: AirResultProps) {
  const { knowledge } = useKnowledge();
  const { units } = usePreferences();
  const speedUnit = preferredUnit('speed', units);
  const claims = <Claims result={result} knowledge={knowledge} units={units} onEdit={hands.edit} />;
  if (nothingEntered(result.geometry)) return <><FirstSizes knowledge={knowledge} onPlace={hands.goTo} />{claims}</>;
  return (
    <>
      <ul className="air-facts">
        <li><b>{bottleneckWords(result)}</b> {shareThrough(result)}</li>
        {result.lossShares.length > 0 && <li>The pressure is lost at: {[...result.lossShares].sort((a, b) => b.share - a.share).slice(0, 3).map((loss) => `${loss.label} ${shownShare(loss.share)}`).join('; ')}.</li>}
        {fansToday(result).length > 0 && <li>{fansToday(result).map((fan) => `${fan.name} ${formatRange(fan.flow.low, fan.flow.high, flowUnitOf(units))} at ${formatRange(fan.pressure.low, fan.pressure.high, 'Pa')}`).join('; ')}. <b>{result.options.find((option) => option.kind === 'leave')?.sideEffects.find((effect) => effect.kind === 'fans-at-odds')?.sentence}</b></li>}
        {result.remarks.map(({ about, sentence }) => about === 'stall' && <li key={about}><b>{sentence}</b></li>)}
        {result.conflicts.map((conflict) => <li key={conflict.sentence}><b>{conflict.sentence}</b></li>)}
      </ul>
      <OptionsList result={result} letters={letters} chosen={chosen} unit={speedUnit} onPick={onPick} />
      <NextDeed result={result} chosen={chosen?.option} knowledge={knowledge} fileOpen={fileOpen} onChoose={hands.choose} />
      <ReadingsChanged result={result} units={units} speedUnit={speedUnit} />
      {chosen && chosen.option.electricalFit.length > 0 && (
        <section className="region" aria-labelledby="electrical-fit">
          <h2 id="electrical-fit">Before you buy: does it fit the output? {chosen.option.title}</h2>
          <p><b>{electricalVerdict(chosen.option.electricalFit)}</b> The fitting list shows this again before you connect it.</p>
          <ElectricalPoints points={chosen.option.electricalFit} />
        </section>
      )}
      {claims}
      <AirTables result={result} letters={letters} units={units} speedUnit={speedUnit} onPlace={hands.goTo} />
    </>
  );
});

/** One claim check for every fan, there or on offer, that is only advertised; of one that is there, while nobody has measured it. */
function Claims({ result, knowledge, units, onEdit }: { readonly result: AirPathResult; readonly knowledge: Knowledge | undefined; readonly units: 'metric' | 'imperial'; readonly onEdit: SheetHands['edit'] }) {
  const { fan: today, trusted: besideToday, candidates } = result.geometry;
  const checksToday = result.claimsToday.map(({ of, credibility }) => {
    const isFirst = of === 'first';
    const fan = isFirst ? today : (today.second ?? today);
    return <ClaimCheck key={of} name={`${fan.name}, today`} fan={fan} credibility={credibility} isHeldAgainstSheet={isFirst && besideToday !== undefined} isOffered={false} knowledge={knowledge} unit={flowUnitOf(units)} onReckon={isFirst ? (withBand) => onEdit((sheet) => withAt(sheet, ['reckonWithBand'], withBand)) : undefined} />;
  });
  const checksOffered = candidates.flatMap(({ id, name, fan, trusted }, index) => {
    const option = result.options.find((each) => each.id === id);
    const shared = { knowledge, unit: flowUnitOf(units), isOffered: true };
    return [
      option?.credibility !== undefined && fan?.freeFlow.basis === 'given' && <ClaimCheck key={id} name={name} fan={fan} credibility={option.credibility} isHeldAgainstSheet={trusted !== undefined} onReckon={(withBand) => onEdit((sheet) => withAt(sheet, ['candidates', index, 'reckonWithBand'], withBand))} {...shared} />,
      option?.credibilityOfSecond !== undefined && fan?.second?.freeFlow.basis === 'given' && <ClaimCheck key={`${id} second`} name={`${name}: ${fan.second.name}`} fan={fan.second} credibility={option.credibilityOfSecond} isHeldAgainstSheet={false} onReckon={undefined} {...shared} />,
    ];
  });
  return [...checksToday, ...checksOffered];
}

interface NextDeedProps {
  readonly result: AirPathResult;
  readonly chosen: AirOption | undefined;
  readonly knowledge: Knowledge | undefined;
  readonly fileOpen: boolean;
  readonly onChoose: SheetHands['choose'];
}

/** The unknown worth measuring most, and the deed: measure it, or choose. */
function NextDeed({ result, chosen, knowledge, fileOpen, onChoose }: NextDeedProps) {
  const router = useRouter();
  // Over readings that do not fit together it stands which of them comes first; nothing else is worth measuring before.
  const atOdds = result.conflicts.length > 0;
  const [telling, ...others] = atOdds ? [] : worthMeasuring(result);
  const method = telling && knowledge?.checks[telling.check]?.methods[0];
  const remedy = chosen && knowledge ? remedyFor(chosen, knowledge) : undefined;
  const choose = async (option: AirOption): Promise<void> => {
    if (remedy === undefined) return;
    await onChoose(option, { remedy, also: knowledge === undefined ? [] : alsoChanged(option, knowledge) }, `Reaches what this print needs with a chance of ${shownShare(option.chance)}; leaving it as it is, ${shownShare(result.options.find((other) => other.kind === 'leave')?.chance ?? 0)}.`);
    router.push('/case/fit');
  };
  const deeds = (
    <>
      {method !== undefined && <Link className="button" href={`/bench/${method}`}>Measure it first</Link>}
      {fileOpen && chosen && chosen.kind !== 'leave' && remedy !== undefined && <button type="button" className="button button-next" onClick={() => void choose(chosen)}>Choose: {chosen.title}</button>}
    </>
  );
  return (
    <>
      <div className="air-choice">
        <div>
          {!atOdds && <p>{telling ? <><b>Most telling unknown: {telling.title}.</b> Measuring it takes {formatMinutes(telling.minutes)} and would change the choice with a chance of {shownShare(telling.chanceOfChange)}.</> : 'No single measurement would change the choice.'}</p>}
          {others.length > 0 && <p className="label">Then: {others.slice(0, 3).map((unknown, index) => <Fragment key={unknown.id}>{index > 0 && ', '}<UnknownLink unknown={unknown} knowledge={knowledge} /> ({formatMinutes(unknown.minutes)})</Fragment>)}.</p>}
          {!fileOpen && <p className="label">Without a case this page compares; with one open it also carries your choice to the fitting list.</p>}
        </div>
        <span className="air-buttons air-deeds-wide not-printed">{deeds}</span>
      </div>
      {(method !== undefined || (fileOpen && chosen !== undefined && chosen.kind !== 'leave')) && <div className="bar">{deeds}</div>}
    </>
  );
}

function UnknownLink({ unknown, knowledge }: { readonly unknown: AirUnknown; readonly knowledge: Knowledge | undefined }) {
  const method = knowledge?.checks[unknown.check]?.methods[0];
  return method === undefined ? unknown.title : <Link href={`/bench/${method}`}>{unknown.title}</Link>;
}

function bottleneckWords({ bottleneck, bottleneckOfFan }: AirPathResult): string {
  const own = bottleneckOfFan === undefined ? '' : ` ${bottleneckOfFan}`;
  switch (bottleneck) {
    case 'fan': return `The fan${own} is the limit; ${own === '' ? 'the' : 'its'} duct costs little.`;
    case 'duct': return `The duct${own === '' ? '' : ` of fan${own}`} is the limit; a stronger fan gains little.`;
    case 'both': return `Fan${own} and ${own === '' ? '' : 'its '}duct limit each other about alike.`;
    default: return bottleneck satisfies never;
  }
}

/** "65–76 % of the fan’s free flow gets through." Of two fans with ducts of their own: of that which feeds the slowest outlet. */
function shareThrough(result: AirPathResult): string {
  const fan = result.bottleneckOfFan;
  const { low, high } = (fan === undefined ? undefined : fansToday(result)[fan - 1]?.shareOfFreeFlow) ?? result.today.shareOfFreeFlow;
  return `${formatRange(low, high, '%')} of ${fan === undefined ? 'the fan’s' : 'its'} free flow gets through${fan === undefined ? '' : '; it feeds the slowest outlet'}.`;
}
