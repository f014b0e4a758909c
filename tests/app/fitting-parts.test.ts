import { describe, expect, it } from 'vitest';
import { alsoChanged, remedyFor } from '@/app/air/air-views';
import { DEMO_SHEET } from '@/app/air/sheet';
import { fittingParts } from '@/app/case/fit/fitting-parts';
import { readContent } from '@/content/read-content';
import { readAirPath } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { buildNet } from '@/lib/diagnosis';

const knowledge = readContent().value?.knowledge;
const path = readAirPath(JSON.stringify(DEMO_SHEET)).value;
if (knowledge === undefined || path === undefined) throw new Error('content or example does not read');
const options = compareAirOptions(path).options;
const optionOf = (kind: string) => {
  const option = options.find((each) => each.kind === kind);
  if (option === undefined) throw new Error(`no option ${kind}`);
  return option;
};

describe('the fitting list of an option', () => {
  it('of both has the steps of the fan and of the duct, with the look at what the duct may strike', () => {
    const both = optionOf('new-fan-and-duct');
    const round = { remedy: remedyFor(both, knowledge) ?? '', also: alsoChanged(both, knowledge) };
    expect(round).toEqual({ remedy: 'fit-stronger-part-fan', also: ['widen-duct', 'even-out-outlets'] });
    const parts = fittingParts(round, knowledge);
    expect(parts.map(({ id }) => id)).toEqual(['fit-stronger-part-fan', 'widen-duct']);
    expect(parts.flatMap(({ steps }) => steps).some(({ do: words, caution = '' }) => /height|strike|travel/i.test(`${words} ${caution}`))).toBe(true);
  });

  it('of a duct alone is that of the duct, and of a fan alone that of the fan', () => {
    const duct = optionOf('new-duct');
    expect(fittingParts({ remedy: remedyFor(duct, knowledge) ?? '', also: alsoChanged(duct, knowledge) }, knowledge).map(({ id }) => id)).toEqual(['widen-duct']);
    expect([remedyFor(optionOf('new-fan'), knowledge), alsoChanged(optionOf('new-fan'), knowledge)]).toEqual(['fit-stronger-part-fan', []]);
  });
});

it('changes made together each cure what they cure: 0.9 and 0.5 of the same cause leave 0.05 of it', () => {
  const { remedies } = knowledge;
  const [wide, even] = [remedies['widen-duct']?.cures['outlet-misses-side']?.chance ?? 0, remedies['even-out-outlets']?.cures['outlet-misses-side']?.chance ?? 0];
  const net = buildNet({ machine: {}, print: {}, rounds: [{ number: 1, remedy: 'widen-duct', also: ['even-out-outlets'], verdict: 'better' }, { number: 2 }] }, [], knowledge);
  const weights = net.net.causes[net.causes.indexOf('outlet-misses-side')]?.weights ?? [];
  expect((weights[2] ?? 0) / ((weights[1] ?? 0) + (weights[2] ?? 0))).toBeCloseTo((1 - wide) * (1 - even), 12);
});
