import type { ReactNode } from 'react';
import type { FitPoint } from '@/lib/airflow';
import { Caution } from '../_parts/caution';
import { Cross, DashedRing, Tick } from '../_parts/signs';
import './electrical-points.css';

const NAMES: Readonly<Record<FitPoint['id'], string>> = {
  voltage: 'Voltage', 'running-current': 'Running current', 'start-current': 'Start current', polarity: 'Plus and minus', drive: 'How it is driven', wire: 'Wire',
};

const SIGNS: Readonly<Record<FitPoint['state'], { readonly sign: ReactNode; readonly word: string }>> = {
  fits: { sign: <Tick />, word: 'fits' }, look: { sign: <DashedRing />, word: 'look at it' }, stop: { sign: <Cross />, word: 'do not connect' },
};

/** Whether a fan may be connected to the output: every point with its sign and word, the caution before them. */
export function ElectricalPoints({ points }: { readonly points: readonly FitPoint[] }) {
  return (
    <>
      <Caution>Switch off, pull the plug and wait a minute before you touch a wire. Work inside the power supply is for a licensed person under your local rules.</Caution>
      <ul className="fit-points">
        {points.map((point) => (
          <li key={point.id} className={`fit-point fit-point-${point.state}`}>
            <span className="fit-point-state">{SIGNS[point.state].sign}{SIGNS[point.state].word}</span>
            <b>{NAMES[point.id]}</b>
            <span>{point.sentence}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The whole in one sentence: the worst point decides. */
export function electricalVerdict(points: readonly FitPoint[]): string {
  const stops = points.filter((point) => point.state === 'stop').length;
  const looks = points.filter((point) => point.state === 'look').length;
  if (stops > 0) return 'Do not connect this fan here.';
  return looks === 0 ? 'It fits the output.' : `Nothing speaks against it; ${looks === 1 ? 'one point wants' : `${looks} points want`} a look.`;
}
