'use client';
import Link from 'next/link';
import type { Knowledge } from '@/lib/knowledge';

/** The check whose method measures the flow of a fan. */
const FAN_FLOW = 'part-fan-free-flow';

/** Stands in place of every verdict while nothing of the path is known: which sizes come first, and how to get them. */
export function FirstSizes({ knowledge, onPlace }: { readonly knowledge: Knowledge | undefined; readonly onPlace: (where: string) => void }) {
  const method = knowledge?.checks[FAN_FLOW]?.methods[0];
  const place = (where: string, words: string) => <button type="button" className="link" onClick={() => onPlace(where)}>{words}</button>;
  return (
    <p id="first-sizes" className="air-first"><b>Nothing can be said yet.</b> Enter first: {place('fan.freeFlow', 'the fan’s free flow')} from its data sheet, or {method === undefined ? 'measure it' : <Link href={`/bench/${method}`}>measure it</Link>}; {place('outlets[1].width', 'the width and height of each mouth')} and {place('duct.section.width', 'of the duct')}, inside, with a calliper.</p>
  );
}
