import type { AirOption } from '@/lib/airflow';
import { formatMinutes } from '@/lib/units';

/** What an option takes: hands now, printing now, and more on every print. */
export function timeWords(option: Pick<AirOption, 'handsTime' | 'printingTime' | 'timePerPrint'>): string {
  const parts = [
    ...(option.handsTime > 0 ? [`${formatMinutes(option.handsTime / 60)} of hands`] : []),
    ...(option.printingTime > 0 ? [`${formatMinutes(option.printingTime / 60)} printing`] : []),
    ...(option.timePerPrint > 0 ? [`${formatMinutes(option.timePerPrint / 60)} more on every print`] : []),
  ];
  return parts.length === 0 ? 'no time' : parts.join(', ');
}
