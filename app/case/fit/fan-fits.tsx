'use client';
import Link from 'next/link';
import type { CaseFile, Round } from '@/lib/cases';
import type { KnownRemedy } from '@/lib/knowledge';
import { ElectricalPoints, electricalVerdict } from '../../air/electrical-points';
import { useCaseAir } from '../prove/case-air';

/** For a change that brings a new fan: what must fit before it is connected, from the air path of the case. */
export function FanFits({ file, round, remedy }: { readonly file: CaseFile; readonly round: Round; readonly remedy: KnownRemedy }) {
  const air = useCaseAir(file)?.result;
  const points = air?.options.find((option) => option.title === round.option)?.electricalFit ?? [];
  if (points.length === 0) {
    if (!bringsFan(remedy)) return null;
    return <p className="label"><Link href="/air">Enter the new fan in the air path</Link>: voltage, current and wire are then checked here before you connect it.</p>;
  }
  return (
    <section className="fan-fits" aria-labelledby="fan-fits">
      <h3 id="fan-fits">Before you connect it: {electricalVerdict(points)}</h3>
      <ElectricalPoints points={points} />
    </section>
  );
}

/** From this chance on of curing a weak fan, a change that the air path decides is another fan; slower layers only help with it. */
const SURE = 0.8;

const bringsFan = (remedy: KnownRemedy): boolean => remedy.decidedBy === 'air-path' && (remedy.cures['weak-part-fan']?.chance ?? 0) > SURE;
