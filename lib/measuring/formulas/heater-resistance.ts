import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Cold resistance of a heater: meter reading less that of the touching leads. Ω. Measured switched off, unplugged and
 * disconnected. Power at a voltage is V²/R. Source: motion sheet 11.1. Worked: 14.6 less 0.2 Ω is 14.4 Ω, 40 W at 24 V.
 */
export const heaterResistance = defineFormula({
  id: 'heater-resistance',
  title: 'Resistance of a heater',
  readings: [
    // Ordinary hand meter, lowest range: ±(1 % + 0.2 Ω), from memory.
    { id: 'meter', title: 'meter reading', kind: 'resistance', unit: 'Ω', repeat: 3, min: 0.1, max: 1000, limits: { fixed: 0.2, share: 0.01 } },
    { id: 'leads', title: 'reading with the leads touching', kind: 'resistance', unit: 'Ω', repeat: 1, min: 0, max: 20, limits: { fixed: 0.1 }, usual: { value: 0.2, plusMinus: 0.2 } },
  ],
  result: 'resistance',
  unit: 'Ω',
  source: 'R = R_meter − R_leads',
  evaluate: ({ meter, leads }) => meter - leads,
  explain: ({ meter, leads }, resistance) => [
    `Resistance = ${formatValue(meter, 'Ω')} − ${formatValue(leads, 'Ω')} = ${formatValue(resistance, 'Ω')}.`,
    `That gives ${formatValue(24 ** 2 / resistance, 'W')} at 24 V and ${formatValue(12 ** 2 / resistance, 'W')} at 12 V.`,
  ],
  judge: (_, resistance) =>
    resistance > 0
      ? []
      : [{ code: 'not-positive', level: 'stop', where: 'reading with the leads touching', what: 'The leads read as much as the heater.', next: 'Measure both again with clean contacts.' }],
});
