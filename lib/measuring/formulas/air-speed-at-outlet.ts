import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Mean air speed at an outlet from readings spread over it. The scatter between the places is part of the ±, so take them at
 * even spacing. m/s. Source: JCGM 100, 4.2 for the mean; tool limits as in the air sheet 3.1 (from memory).
 * Worked: 4.2, 5.0, 5.3, 4.9, 4.1 m/s is a mean of 4.70 m/s.
 */
export const airSpeedAtOutlet = defineFormula({
  id: 'air-speed-at-outlet',
  title: 'Air speed at several places of an outlet',
  readings: [
    { id: 'speed', title: 'air speed', kind: 'speed', unit: 'm/s', repeat: 5, min: 0, max: 60, limits: { fixed: 0.2, share: 0.03 }, once: { share: 0.25 } },
  ],
  result: 'speed',
  unit: 'm/s',
  source: 'mean of V over the outlet',
  evaluate: ({ speed }) => speed,
  explain: (_, speed) => [`Mean speed ${formatValue(speed, 'm/s')} over the places measured.`],
});
