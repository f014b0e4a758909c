import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it, vi } from 'vitest';
import { AirResult } from '@/app/air/air-result';
import { advisedOption, lettered } from '@/app/air/air-views';
import { AnswerLine } from '@/app/air/answer-line';
import { OptionsAxis } from '@/app/air/options-axis';
import { DEMO_SHEET, EMPTY_SHEET, type Sheet } from '@/app/air/sheet';
import { readAirPath, type AirPathResult } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { collisions, outside, renderSheets } from '../rendered-sheet';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push: () => undefined }) }));

const HANDS = { edit: () => undefined, choose: () => Promise.resolve(), goTo: () => undefined };
const MOUTHS = [{ name: 'left', direction: '180°', width: '14 mm', height: '3 mm' }, { name: 'right', direction: '0°' }];
const ADVERTISED = { kind: 'blower', name: 'part fan', claim: 'advertised', frame: '50 x 15', voltage: '24 V', current: '0.08 A', speed: '9000 rpm', freeFlow: '12 CFM', maxPressure: '900 Pa' };
/** Speeds of two like mouths that differ by more than any fork of usual sizes explains. */
const AT_ODDS = { ...EMPTY_SHEET, fan: { kind: 'blower', frame: '5015', claim: 'advertised', voltage: '24 V', current: '0.1 A', speed: '6000 rpm', freeFlow: '5.36 CFM' }, measured: [{ what: 'outlet-speed', at: 'left', value: '2.1 ± 0.3 m/s' }, { what: 'outlet-speed', at: 'right', value: '5 m/s' }] };

function resultOf(sheet: Sheet): AirPathResult {
  const { value, problems } = readAirPath(JSON.stringify(sheet));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return compareAirOptions(value, problems, { samples: 300 });
}

/** The page under the drawing, as somebody reads it, and the line at the foot of the form. */
function read(sheet: Sheet): { readonly page: string; readonly markup: string; readonly foot: string } {
  const result = resultOf(sheet);
  const letters = lettered(result);
  const chosen = letters.find(({ option }) => option.id === advisedOption(result));
  const markup = renderToStaticMarkup(<AirResult result={result} letters={letters} chosen={chosen} fileOpen={false} onPick={() => undefined} hands={HANDS} />);
  const words = (html: string): string => html.replaceAll(/<[^>]*>/gu, '').replaceAll('&#x27;', '’');
  return { page: words(markup), markup, foot: words(renderToStaticMarkup(<AnswerLine result={result} letters={letters} />)) };
}

const VERDICTS = /is the limit|limit each other|gets through|least expected cost|would change the choice|Best:/u;

describe('a path of which nothing is known', () => {
  it('gets no verdict and no best change, but the sizes that come first and how to get them', () => {
    for (const sheet of [EMPTY_SHEET, { ...EMPTY_SHEET, duct: { section: { width: '20 mm', height: '8 mm' } } }, { ...EMPTY_SHEET, print: { polymer: 'PETG', layerTime: '9 s' } }]) {
      const { page, foot } = read(sheet);
      expect(`${page} ${foot}`).not.toMatch(VERDICTS);
      expect(page).toMatch(/^Nothing can be said yet\. Enter first: the fan’s free flow from its data sheet, or measure it; the width and height of each mouth and of the duct, inside, with a calliper\.$/u);
      expect(foot).toContain('fan and mouths come first');
    }
  });

  it.each<[string, Sheet]>([
    ['the size of its fan', { ...EMPTY_SHEET, fan: { kind: 'blower', frame: '50 x 15' } }],
    ['the free flow of its fan', { ...EMPTY_SHEET, fan: { kind: 'blower', freeFlow: '1.2 L/s' } }],
    ['one mouth', { ...EMPTY_SHEET, outlets: MOUTHS }],
    ['a reading', { ...EMPTY_SHEET, measured: [{ what: 'free-flow', value: '1.1 L/s' }] }],
  ])('is answered with wide bands as soon as one thing is known: %s', (_, sheet) => {
    const { page, foot } = read(sheet);
    expect(page).toMatch(/gets through/u);
    expect(page).toMatch(/least expected cost/u);
    expect(foot).toMatch(/Best: /u);
    expect(page).not.toContain('Nothing can be said yet');
  });

  it('still has the claim of a fan on offer checked', () => {
    expect(read({ ...EMPTY_SHEET, candidates: [{ name: 'offer', price: 9, fan: ADVERTISED }] }).page).toContain('Is the claim credible?');
  });
});

describe('readings that do not fit together', () => {
  it('are told over the ranking, with the one to take again, and no change is marked as the best', () => {
    const { page, markup, foot } = read(AT_ODDS);
    const doubt = 'This ranking rests on';
    expect(page.split(doubt)).toHaveLength(2);
    expect(page).toMatch(/This ranking rests on .*; take the air speed at the outlet “(left|right)” again first\./u);
    expect(markup.indexOf(doubt)).toBeLessThan(markup.indexOf('air-option-head'));
    expect(markup).toContain('class="air-option"');
    expect(markup).not.toMatch(/air-option-cheapest|air-option-best/u);
    expect(page).not.toMatch(/least expected cost|No single measurement|Most telling unknown/u);
    expect(foot).toContain('The readings do not fit together');
    expect(foot).not.toContain('Best:');
  });

  it('leave no crumbs of the reckoning in any figure', () => {
    expect(read(AT_ODDS).page).not.toMatch(/0\.0000|100–100/u);
  });

  it('are not told where they fit', () => {
    const { page, markup } = read(DEMO_SHEET);
    expect(page).not.toContain('rests on');
    expect(markup).toMatch(/air-option-cheapest/u);
  });
});

describe('the claim of the fan that is there', () => {
  const sheet = { ...EMPTY_SHEET, outlets: MOUTHS, fan: ADVERTISED };

  it('is judged like that of a fan on offer, and the claim can be taken back', () => {
    const { page } = read(sheet);
    // 900 Pa and 12 CFM are 66 % of 24 V · 0.08 A: see tests/lib/airflow/credibility.test.ts.
    expect(page).toContain('Is the claim credible? part fan, today');
    expect(page).toContain('Not credible.');
    expect(page).toContain('Reckon with the claim all the same');
    const [today, offered] = [resultOf(sheet).claimsToday[0]?.credibility, resultOf({ ...sheet, candidates: [{ name: 'offer', fan: ADVERTISED }] }).options.find((option) => option.kind === 'new-fan')?.credibility];
    expect(today).toEqual(offered);
  });

  it('is held against the trusted sheet that came with it', () => {
    const claimed = { ...sheet, fan: { kind: 'blower', claim: 'advertised', freeFlow: '5.36 CFM', speed: '6000 rpm', current: '0.10 A', voltage: '24 V' }, trusted: { freeFlow: '5 CFM', speed: '6500 rpm', current: '0.18 A', voltage: '24 V' } };
    // By hand: 5 CFM · (0.10/0.18)^0.65 less a tenth to 5 CFM · (0.10/0.18)^(1/3) and a tenth; 1 CFM is 0.4719 L/s.
    expect(read(claimed).page).toMatch(/Not credible\..*The band: 1\.45–2\.13\sL\/s \(3\.1–4\.5\sCFM\)/u);
  });

  it('is not asked about once its flow was measured, or where its figures are no advertisement', () => {
    const asked = (more: object): number => resultOf({ ...sheet, ...more }).claimsToday.length;
    expect([asked({}), asked({ measured: [{ what: 'free-flow', value: '1.8 L/s' }] }), asked({ fan: { ...ADVERTISED, claim: 'data-sheet' } }), asked({ fan: { ...ADVERTISED, claim: 'measured' } })]).toEqual([1, 0, 0, 0]);
    // Each of two fans by itself: a reading of the second says nothing about the first.
    const pair = { fan: { ...ADVERTISED, count: 2, arrangement: 'parallel', second: ADVERTISED } };
    expect(resultOf({ ...sheet, ...pair, measured: [{ what: 'free-flow', fan: 'second', value: '1.8 L/s' }] }).claimsToday.map(({ of }) => of)).toEqual(['first']);
    expect(resultOf({ ...sheet, ...pair }).claimsToday.map(({ of }) => of)).toEqual(['first', 'second']);
  });
});

describe('the axis of the changes', () => {
  it('keeps every figure of its scale beside the word for the need, wherever the need lies', () => {
    const wrong = [430, 320, 288, 240].flatMap((width) => [0, 2, 4.1, 6, 9.9, 14].flatMap((value) => ['needs', 'no air would do'].flatMap((needWords) => renderSheets(<OptionsAxis from={0} to={10.4} unit="m/s" need={{ value, low: value, high: value }} needWords={needWords} width={width} />).flatMap((drawn) => {
      const figures = drawn.words.map(({ text }) => text).filter((text) => text !== needWords);
      // By hand: a figure every 1 m/s where there is room for seven, else every 2 m/s; the scale ends at 10.4.
      const expected = Array.from({ length: width > 420 ? 11 : 6 }, (_, k) => String(width > 420 ? k : 2 * k));
      const lost = figures.join(' ') === expected.join(' ') ? [] : [`figures ${figures.join(' ')}`];
      return [...lost, ...collisions(drawn), ...outside(drawn, 1)].map((what) => `${needWords} at ${value}, ${width} px: ${what}`);
    }))));
    expect(wrong).toEqual([]);
  });
});
