import { formatPercent, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Share of mass lost in drying: (before − after)/before of the filament alone, spool taken off. kg to a ratio. Both are weighed on
 * one scale, so its common error nearly drops out and its step and drift remain. Source: definition. An empty spool counted as
 * filament makes the share too small. Worked: 1250.0 to 1247.5 g, spool 250 g, is 0.25 %.
 */
export const massLoss = defineFormula({
  id: 'mass-loss',
  title: 'Mass lost in drying',
  readings: [
    { id: 'before', title: 'mass before', kind: 'mass', unit: 'g', repeat: 1, min: 1e-3, max: 20, limits: { fixed: 0.1e-3 } },
    { id: 'after', title: 'mass after', kind: 'mass', unit: 'g', repeat: 1, min: 1e-3, max: 20, limits: { fixed: 0.1e-3 } },
    { id: 'spool', title: 'mass of the empty spool', kind: 'mass', unit: 'g', repeat: 1, min: 0, max: 5, limits: { fixed: 20e-3 }, usual: { value: 0, plusMinus: 0 } },
  ],
  result: 'ratio',
  unit: '%',
  source: 'w = (m₀ − m₁) / (m₀ − m_spool)',
  evaluate: ({ before, after, spool }) => (before - after) / (before - spool),
  explain: ({ before, after, spool }, share) => [
    `Lost ${formatValue(before - after, 'g')} of ${formatValue(before - spool, 'g', 4)} filament: ${formatPercent(share, 2)}.`,
  ],
  judge: ({ before, spool }) =>
    before > spool
      ? []
      : [{ code: 'spool-too-heavy', level: 'stop', where: 'mass of the empty spool', what: 'The empty spool weighs as much as the full one.', next: 'Weigh an empty spool of the same make, or leave this out.' }],
});
