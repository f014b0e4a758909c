import Link from 'next/link';
import type { KnownCheck } from '@/lib/knowledge';
import './bench.css';

/** Nobody knows by heart how much air a print needs: the air path reckons it, and takes the reading over from the case. */
export function NeededFlow({ answer }: Pick<KnownCheck, 'answer'>) {
  if (answer.kind !== 'quantity' || answer.compareWith !== 'needed' || answer.quantity !== 'volume-flow') return null;
  return <p className="needed-flow">You do not know how much air this print needs? Use the reading without it, then <Link href="/air">open the air path</Link>: it takes the reading over from your case and reckons the need from the sizes of fan, duct and print.</p>;
}
