import { formatNumber, formatValue, toUnit } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Drop of the shown temperature, such as when the fan starts: before less lowest. K. Both come from one sensor, so only the
 * display step and the wobble count, not its calibration. Source: motion sheet 11.3 (more than 3 to 5 K is unusual; common
 * practice, no source). Worked: 215.0 to 208.5 °C is 6.5 K.
 */
export const temperatureDrop = defineFormula({
  id: 'temperature-drop',
  title: 'Drop of the shown temperature',
  readings: [
    { id: 'before', title: 'temperature before', kind: 'temperature', unit: '°C', repeat: 3, min: 253.15, max: 873.15, limits: { fixed: 0.3 }, once: { fixed: 0.5 } },
    { id: 'lowest', title: 'lowest temperature after', kind: 'temperature', unit: '°C', repeat: 3, min: 253.15, max: 873.15, limits: { fixed: 0.3 }, once: { fixed: 0.5 } },
  ],
  result: 'temperature-difference',
  unit: 'K',
  source: 'ΔT = T_before − T_lowest',
  evaluate: ({ before, lowest }) => before - lowest,
  explain: ({ before, lowest }, drop) => [
    `Drop = ${formatNumber(toUnit(before, '°C'), 4)} − ${formatValue(lowest, '°C', 4)} = ${formatValue(drop, 'K', 2)}.`,
  ],
});
