import { caseSchema, type CaseFile } from '@/lib/cases';

/**
 * A case of the size that a patient person fills in: 8 symptoms, 4 measurements. Machine 3 of the tool library, vent
 * hinges for the greenhouse, edges curling on one side since the fan was swapped. Made up for timing only.
 */
export const CASE_TO_TIME: CaseFile = caseSchema.parse({
  schema: 'leeward/case', version: 1, id: 'timing',
  words: 'edges of the hinge curl up on the left since the new fan, bridges hang down and small pegs melt',
  machine: { name: 'no. 3', kinematics: 'moving-bed', feedPath: 'short', enclosure: 'open', supply: '24 V', fanMarking: 'none' },
  print: { material: 'PLA', onset: 'gradually', touched: ['fan'] },
  observations: [
    ...['curled-edges', 'drooping-underside', 'drooping-bridges', 'melted-small-features', 'glossy-soft-spots', 'fan-noise'].map((symptom) => ({ symptom, state: 'seen' })),
    ...['lifted-corners', 'strings'].map((symptom) => ({ symptom, state: 'not-seen' })),
  ],
  findings: [
    { check: 'part-fan-free-flow', result: { quantity: 'ratio', value: 0.55, plusMinus: 0.06, unit: '1' } },
    { check: 'part-fan-flow-in-duct', result: { quantity: 'ratio', value: 0.4, plusMinus: 0.06, unit: '1' } },
    { check: 'outlet-share-weaker', result: { quantity: 'ratio', value: 0.42, plusMinus: 0.05, unit: '1' } },
    { check: 'nozzle-temperature-error', result: { quantity: 'temperature-difference', value: 2, plusMinus: 4, unit: 'K' } },
  ],
});
