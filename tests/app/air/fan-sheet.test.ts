import { describe, expect, it } from 'vitest';
import { chooseRemedy } from '@/app/_case/rounds';
import { fanOfOption, fanSheetOf, fansOnOffer } from '@/app/air/fan-sheet';
import { DEMO_SHEET } from '@/app/air/sheet';
import { electricalFit, readAirPath } from '@/lib/airflow';
import { caseAsText, readCase } from '@/lib/cases';
import { compareAirOptions } from '@/lib/decision';

const result = (() => {
  const { value, problems } = readAirPath(JSON.stringify(DEMO_SHEET));
  if (value === undefined) throw new Error('the example should read');
  return compareAirOptions(value, problems, { samples: 300 });
})();

describe('the figures of a chosen fan', () => {
  it('belong to every option that brings a fan, and to no other', () => {
    const bringing = result.options.filter((option) => option.electricalFit.length > 0).map((option) => option.id);
    expect(bringing.length).toBeGreaterThan(1);
    expect(result.options.filter((option) => fanOfOption(DEMO_SHEET, option.id) !== undefined).map((option) => option.id).sort()).toEqual([...bringing].sort());
  });

  it('give the fitting list what the comparison said of wire, current and voltage', () => {
    const [offer] = fansOnOffer(DEMO_SHEET);
    if (offer === undefined) throw new Error('a fan on offer expected');
    const { value } = readAirPath(JSON.stringify(fanSheetOf(DEMO_SHEET, offer)));
    if (value === undefined) throw new Error('the kept sheet should read');
    expect(value.fan.name).toBe('50 × 15 radial, 24 V');
    expect(electricalFit(value.fan, value.output)).toEqual(result.options.find((option) => option.id === 'candidate-1')?.electricalFit);
  });

  it('go into the case with the choice and come back with its file; another choice takes them out', () => {
    const read = readCase('{"schema":"leeward/case","version":1,"id":"a","rounds":[{"number":1}]}').value;
    const [offer] = fansOnOffer(DEMO_SHEET);
    if (read === undefined || offer === undefined) throw new Error('a case and an offer expected');
    const chosen = chooseRemedy(read, { remedy: 'fit-stronger-part-fan', title: 'New fan', option: 'x'.repeat(200), fanSheet: fanSheetOf(DEMO_SHEET, offer), why: '' });
    const again = readCase(caseAsText(chosen));
    expect(again.problems).toEqual([]);
    expect(again.value?.rounds[0]?.fanSheet).toEqual(fanSheetOf(DEMO_SHEET, offer));
    expect(chooseRemedy(chosen, { remedy: 'slow-short-layers', title: 'Slower', why: '' }).rounds[0]?.fanSheet).toBeUndefined();
  });
});
