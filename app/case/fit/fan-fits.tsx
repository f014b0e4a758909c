'use client';
import Link from 'next/link';
import { useMemo } from 'react';
import { electricalFit, readAirPath } from '@/lib/airflow';
import type { CaseFile, Round } from '@/lib/cases';
import type { KnownRemedy } from '@/lib/knowledge';
import { changeCase } from '../../_case/current-case';
import { changeRound } from '../../_case/rounds';
import { caseReadings } from '../../air/case-readings';
import { ElectricalPoints, electricalVerdict } from '../../air/electrical-points';
import { fanSheetOf, fansOnOffer, type FanOnOffer } from '../../air/fan-sheet';
import { bringsFan } from './brings-fan';

/** For a change that brings a new fan: what must fit before it is connected, from the figures that were kept when it was chosen. */
export function FanFits({ file, round, remedy }: { readonly file: CaseFile; readonly round: Round; readonly remedy: KnownRemedy }) {
  const { fanSheet } = round;
  const points = useMemo(() => {
    const path = fanSheet === undefined ? undefined : readAirPath(JSON.stringify(fanSheet)).value;
    return path === undefined ? undefined : { name: path.fan.name, list: electricalFit(path.fan, path.output) };
  }, [fanSheet]);
  if (points !== undefined) {
    return (
      <section className="fan-fits" aria-labelledby="fan-fits">
        <h3 id="fan-fits">Before you connect it: {electricalVerdict(points.list)}</h3>
        <p className="label">{points.name}. Not this fan? <Link href="/air">Choose again in the air path</Link>.</p>
        <ElectricalPoints points={points.list} />
      </section>
    );
  }
  return bringsFan(remedy) ? <WhichFan file={file} /> : null;
}

/** A fan is to be fitted, and which one is not said: one of those on offer, or one to be entered. */
function WhichFan({ file }: { readonly file: CaseFile }) {
  const sheet = file.airPath === undefined ? undefined : caseReadings(file.airPath, file);
  const offers = sheet === undefined ? [] : fansOnOffer(sheet);
  if (sheet === undefined || offers.length === 0) {
    return <p className="label"><Link href="/air">Enter the new fan in the air path</Link>: voltage, current and wire are then checked here before you connect it.</p>;
  }
  const keep = (offer: FanOnOffer): void => void changeCase((each) => changeRound(each, { fanSheet: { ...fanSheetOf(sheet, offer) } }));
  return (
    <div className="fan-fits">
      <p>Which fan do you fit? Voltage, current and wire are then checked here before you connect it.</p>
      <p className="fan-fits-which">{offers.map((offer) => <button key={offer.index} type="button" className="button" onClick={() => keep(offer)}>{offer.name}</button>)}</p>
      <p className="label">Another one? <Link href="/air">Enter it in the air path</Link>.</p>
    </div>
  );
}
