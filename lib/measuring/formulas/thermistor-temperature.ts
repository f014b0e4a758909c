import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';
import { threePointTemperature } from '../thermistor';

/**
 * Temperature of a thermistor from its resistance, by the three-point model 1/T = c₁ + c₂·ln R + c₃·(ln R)³ through its
 * resistances at 25, 150 and 250 °C. Ω to K. The usual values are those of an ordinary 100 kΩ bead (motion sheet 11.2); a bead
 * of another make needs its own. Below −10 °C and above 300 °C the points are too far away: a problem.
 * Worked: 393 Ω is 220 °C.
 */
export const thermistorTemperature = defineFormula({
  id: 'thermistor-temperature',
  title: 'Temperature of a thermistor from its resistance',
  readings: [
    { id: 'resistance', title: 'resistance', kind: 'resistance', unit: 'kΩ', repeat: 3, min: 20, max: 2e6, limits: { fixed: 0.2, share: 0.01 } },
    { id: 'at25', title: 'resistance at 25 °C', kind: 'resistance', unit: 'kΩ', repeat: 1, min: 1e3, max: 1e6, usual: { value: 100e3, plusMinus: 1e3 } },
    // Spread of the hot points between beads of one name: estimate.
    { id: 'at150', title: 'resistance at 150 °C', kind: 'resistance', unit: 'Ω', repeat: 1, min: 50, max: 1e5, usual: { value: 1770, plusMinus: 60 } },
    { id: 'at250', title: 'resistance at 250 °C', kind: 'resistance', unit: 'Ω', repeat: 1, min: 10, max: 1e4, usual: { value: 230, plusMinus: 10 } },
  ],
  result: 'temperature',
  unit: '°C',
  source: '1/T = c₁ + c₂ ln R + c₃ (ln R)³',
  evaluate: ({ resistance, at25, at150, at250 }) =>
    threePointTemperature(resistance, [[298.15, at25], [423.15, at150], [523.15, at250]]),
  explain: ({ resistance }, temperature) => [`${formatValue(resistance, 'Ω', 4)} belongs to ${formatValue(temperature, '°C', 4)}.`],
  judge: (_, temperature) =>
    temperature >= 263.15 && temperature <= 573.15
      ? []
      : [{ code: 'out-of-range', level: 'stop', where: 'resistance', what: 'This resistance lies outside −10 to 300 °C for such a bead.', allowed: 'about 95 Ω to 500 kΩ for a 100 kΩ bead', next: 'Check the meter range and the connector. A reading near zero is a short, one without end a broken wire.' }],
});
