import { describe, expect, it } from 'vitest';
import { caseReadings } from '@/app/air/case-readings';
import { beforeChangeOf, fittedUndescribed, sheetAsFitted, withFittedSheet } from '@/app/air/fitted-sheet';
import { DEMO_SHEET, rowsAt, valueAt } from '@/app/air/sheet';
import { newCase } from '@/app/_case/current-case';
import type { CaseFile } from '@/lib/cases';
import { readAirPath } from '@/lib/airflow';

const [fan, fork] = rowsAt(DEMO_SHEET, ['candidates']);
const measured = { quantity: 'volume-flow', value: 0.4, plusMinus: 0.03, unit: 'L/s' } as const;
const file = (more: Partial<CaseFile> = {}): CaseFile => ({
  ...newCase(), airPath: DEMO_SHEET,
  findings: [{ check: 'part-fan-flow-in-duct', result: measured, round: 1 }],
  rounds: [{ number: 1, remedy: 'fit-stronger-part-fan', option: 'Both', airOption: 'candidate-1+candidate-2', fittedOn: '2026-11-20', verdict: 'better' }, { number: 2 }],
  ...more,
});

describe('a sheet once its offers are fitted', () => {
  const after = sheetAsFitted(DEMO_SHEET, 'candidate-1+candidate-2');

  it('has the new fan and duct for today’s, nothing left on offer, and no reading of the old path', () => {
    expect(valueAt(after, ['fan', 'frame'])).toBe(valueAt(fan, ['fan', 'frame']));
    expect(valueAt(after, ['fan', 'name'])).toBe(valueAt(fan, ['name']));
    expect(valueAt(after, ['outlets'])).toBe(valueAt(fork, ['outlets']));
    expect([rowsAt(after, ['candidates']), rowsAt(after, ['measured']), rowsAt(after, ['print', 'sides']), rowsAt(after, ['leaks'])]).toEqual([[], [], [], []]);
    expect(readAirPath(JSON.stringify(after)).problems.filter(({ level }) => level === 'stop')).toEqual([]);
  });

  it('believes the fitted fan no more than it believed the offer', () => {
    const flow = (sheet: object): { low: number; high: number } | undefined => readAirPath(JSON.stringify(sheet)).value?.fan.expectedFlow;
    expect(flow(after)).toEqual(readAirPath(JSON.stringify(DEMO_SHEET)).value?.candidates[0]?.fan?.expectedFlow);
    expect(flow(after)).toBeDefined();
    expect(flow(sheetAsFitted({ ...after, candidates: [{ name: 'next', fan: { kind: 'blower', freeFlow: '1 L/s', claim: 'data-sheet' } }] }, 'candidate-1'))).toBeUndefined();
  });

  it('keeps what the option leaves: a fan alone leaves the duct and the other offer', () => {
    const fanOnly = sheetAsFitted(DEMO_SHEET, 'candidate-1');
    expect([valueAt(fanOnly, ['duct']), valueAt(fanOnly, ['outlets'])]).toEqual([valueAt(DEMO_SHEET, ['duct']), valueAt(DEMO_SHEET, ['outlets'])]);
    expect(rowsAt(fanOnly, ['candidates'])).toEqual([fork]);
  });
});

describe('a case whose air path was changed', () => {
  it('asks for it once: after the fitting, and only for parts', () => {
    expect(fittedUndescribed(file())?.number).toBe(1);
    expect(fittedUndescribed(file({ rounds: [{ number: 1, remedy: 'seal-fan-to-duct', airOption: 'seal-leak', fittedOn: '2026-11-20' }] }))).toBeUndefined();
    expect(fittedUndescribed(file({ rounds: [{ number: 1, remedy: 'fit-stronger-part-fan', airOption: 'candidate-1' }] }))).toBeUndefined();
    expect(fittedUndescribed(withFittedSheet(file(), { number: 1, airOption: 'candidate-1+candidate-2' }))).toBeUndefined();
  });

  it('keeps the path as it was for the report, and lets readings of then speak of that one only', () => {
    const described = withFittedSheet(file(), { number: 1, airOption: 'candidate-1+candidate-2' });
    const now = caseReadings(described.airPath ?? {}, described);
    expect(rowsAt(now, ['measured'])).toEqual([]);
    const then = beforeChangeOf(described, 1);
    expect(then.airPath).toEqual(DEMO_SHEET);
    expect(rowsAt(caseReadings({ ...then.airPath, measured: [] }, then), ['measured'])).toHaveLength(1);
  });

  it('takes readings of the new path once they are taken', () => {
    const described = withFittedSheet(file(), { number: 1, airOption: 'candidate-1' });
    const again = { ...described, findings: [...described.findings, { check: 'part-fan-flow-in-duct', result: { ...measured, value: 0.9 }, round: 2 }] };
    expect(rowsAt(caseReadings(again.airPath ?? {}, again), ['measured'])).toEqual([{ what: 'flow-in-duct', value: '0.9 L/s ± 0.03 L/s' }]);
  });
});
