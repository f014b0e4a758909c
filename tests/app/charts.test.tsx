import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { bandWords, BudgetBar, ChanceBar, ChangeBar, changeWords, CurveChart, DirectionMarks, IntervalAxis, IntervalBar, IntervalRows, minutesWords, NumberLine, PolarBeforeAfter, ReadingStrip, shareRange, shownShare, TimeBars, WeightBar, weightWords } from '@/app/_charts';
import { placeLabel } from '@/app/_charts/label-placement';
import { linear, logarithmic, logTicks, niceEnd, ticks, tickWords, within } from '@/app/_charts/scales';
import { wrapWords } from '@/app/_drawings/wrap-words';
import { wordWidth } from '@/app/_drawings/word-width';
import { after, before, curves, expected, operatingPoints, options, specimens, zones } from '../site/specimens';
import { collisions, forbidden, outside, renderSheets } from './rendered-sheet';

const slack = 3;
const nudge = 1e-9;
/** No-break thin space: a figure and its per cent sign stay on one line. */
const thin = '\u202f';

describe('scales and ticks', () => {
  it('maps by hand-reckoned values', () => {
    expect(linear([0, 10], [0, 100])(2.5)).toBe(25);
    expect(linear([0, 10], [100, 0])(2.5)).toBe(75);
    expect(logarithmic([1, 100], [0, 200])(10)).toBe(100);
    expect(logarithmic([0.1, 10], [0, 200])(0)).toBe(0);
    expect(within(linear([0, 1], [0, 1]), 7)).toBe(1);
  });

  it('refuses ends that have no place', () => {
    expect(() => logarithmic([0, 1], [0, 1])).toThrow(/above 0/);
    expect(() => linear([Number.NaN, 1], [0, 1])).toThrow(/finite/);
  });

  it.each([
    [0, 1, 5, [0, 0.2, 0.4, 0.6, 0.8, 1]],
    [0, 300, 3, [0, 100, 200, 300]],
    [14.2, 16.2, 4, [14.5, 15, 15.5, 16]],
    [-1, 1, 4, [-1, -0.5, 0, 0.5, 1]],
    [0, 0.0009, 3, [0, 0.0002, 0.0004, 0.0006, 0.0008]],
  ])('steps from %f to %f in about %i ticks', (from, to, count, wanted) => {
    expect(ticks(from, to, count)).toEqual(wanted);
  });

  it('has ticks only inside, evenly spaced by 1, 2 or 5 times a power of ten', () => {
    for (const [from, to] of [[0.3, 7.7], [-3, 12000], [1e-6, 3e-6], [99.2, 99.9]] as const) {
      const marks = ticks(from, to, 5);
      expect(marks.length).toBeGreaterThan(2);
      expect(marks.every((m) => m >= from - nudge && m <= to + nudge)).toBe(true);
      const step = (marks[1] ?? 0) - (marks[0] ?? 0);
      const lead = step / 10 ** Math.floor(Math.log10(step) + nudge);
      expect([1, 2, 5].some((n) => Math.abs(lead - n) < 1e-4)).toBe(true);
    }
  });

  it('ends an axis at a tick and writes all ticks with the same decimals', () => {
    expect(niceEnd(0, 1.07, 5)).toBe(1.2);
    expect(logTicks(0.1, 10)).toEqual([0.1, 0.2, 0.5, 1, 2, 5, 10]);
    expect([0, 0.5, 1].map((t) => tickWords(t, [0, 0.5, 1]))).toEqual(['0.0', '0.5', '1.0']);
    expect(tickWords(-2, [-2, 0])).toBe('−2');
  });
});

describe('figures as people read them', () => {
  it('never shows a false 0 or 100', () => {
    expect([0.584, 0.004, 0.996, 0, 1].map(shownShare)).toEqual(['58', '<1', '>99', '0', '100'].map((figure) => `${figure}${thin}%`));
    expect([[0.44, 0.71], [0.92, 0.9944], [0.004, 0.05], [0.00001, 0.99999], [0, 1]].map(([low = 0, high = 0]) => shareRange(low, high))).toEqual(['44–71', '92–99.4', '0.4–5', '0.1–99.9', '0–100']);
    expect([{ low: 0.44, high: 0.71 }, { low: 0.77, high: 0.77 }].map(bandWords)).toEqual(['44–71', '']);
    expect(changeWords(0.47, 0.71)).toBe(`47 → 71${thin}%`);
  });

  it('says weights as factors for or against', () => {
    expect([2.6, 1 / 1.4, 14.2, 1.01, 4000].map((f) => weightWords(f).words)).toEqual(['× 2.6 for', '÷ 1.4 against', '× 14 for', '× 1, says nothing', '× over 999 for']);
  });

  it('says times in minutes and hours', () => {
    expect([34, 59.6, 112].map(minutesWords)).toEqual(['34 min', '1 h 00', '1 h 52']);
  });

  it('wraps to the width, never inside a word', () => {
    const lines = wrapWords('The air is innocent. Look at heat in the plastic.', 120);
    expect(lines.join(' ')).toBe('The air is innocent. Look at heat in the plastic.');
    expect(lines.every((line) => wordWidth(line) <= 120)).toBe(true);
  });
});

describe('every chart', () => {
  const groups = specimens.filter((group) => group.name === 'charts');

  it('renders with sound numbers, words inside the sheet and apart, no inline style', () => {
    expect(groups.flatMap((g) => g.items).length).toBeGreaterThan(15);
    const findings = groups.flatMap((g) => g.items).flatMap((item) => renderSheets(item.show).flatMap((sheet) => [...forbidden(sheet.markup), ...outside(sheet, slack), ...collisions(sheet)].map((found) => `${item.name}: ${found}`)));
    expect(findings).toEqual([]);
  });

  it('has no words under 14 px', () => {
    expect(groups.flatMap((g) => g.items).flatMap((item) => renderSheets(item.show).flatMap((sheet) => sheet.words)).filter((w) => w.size < 14)).toEqual([]);
  });
});

describe('single charts', () => {
  const numberOf = (markup: string, pattern: RegExp): number => Number(pattern.exec(markup)?.[1]);

  it('draws a chance as long as it is', () => {
    const width = (chance: number): number => numberOf(renderToStaticMarkup(<ChanceBar chance={chance} low={0} high={1} />), /<rect[^>]*width="([^"]+)"/);
    // 204 px less 5 px at each end leave 194 px for 100 %.
    expect(width(1)).toBe(194);
    expect(width(0.5)).toBe(97);
    expect(width(0)).toBe(0);
  });

  it('keeps the chance before the last entry as a second, open mark and says it', () => {
    const markup = renderToStaticMarkup(<ChanceBar chance={0.58} low={0.44} high={0.71} was={0.4} name="Duct" />);
    expect(markup).toContain(`aria-label="Duct: chance 58${thin}%, range 44–71, before 40${thin}%"`);
    expect(markup.match(/d-fill-paper/g)).toHaveLength(1);
  });

  it('gives for and against the same length and different shapes', () => {
    const bar = (factor: number): string => renderToStaticMarkup(<WeightBar factor={factor} />);
    const width = (factor: number): number => numberOf(bar(factor), /<rect[^>]*width="([^"]+)"/);
    expect(width(4)).toBeCloseTo(width(1 / 4), 1);
    expect(width(16)).toBeCloseTo(2 * width(4), 1);
    expect(bar(4)).toContain('d-fill-ink');
    expect(bar(1 / 4)).not.toContain('d-fill-ink');
  });

  it('takes readings of any size and none at all', () => {
    const findings = [[], [0], [1e-9, 2e-9], [15, 15, 15], [-3, 5], [1e6, 1.2e6]].flatMap((readings) => renderSheets(<ReadingStrip readings={readings} unit="s" name="Time" />).flatMap((sheet) => [...forbidden(sheet.markup), ...outside(sheet, slack), ...collisions(sheet)].map((found) => `${String(readings)}: ${found}`)));
    expect(findings).toEqual([]);
  });

  it('keeps a reading beyond the line on the chart and its true value in words', () => {
    const [sheet] = renderSheets(<NumberLine from={0} to={1} unit="L/s" expected={expected} zones={zones} reading={{ value: 3, low: 2.5, high: 3.5, words: '3.0 ± 0.5, yours' }} name="Air" width={700} />);
    expect(sheet === undefined ? ['no sheet'] : [...outside(sheet, slack), ...forbidden(sheet.markup)]).toEqual([]);
    expect(sheet?.markup).toContain('Reading 3.0 ± 0.5, yours.');
  });

  it('has zone words that fit at any width from tablet to desk', () => {
    const findings = [640, 760, 1000, 1376].flatMap((width) => renderSheets(<NumberLine from={0} to={1} unit="L/s" expected={expected} zones={zones} name="Air" width={width} />).flatMap((sheet) => [...outside(sheet, slack), ...collisions(sheet)].map((found) => `${width}: ${found}`)));
    expect(findings).toEqual([]);
  });

  it('names curves and points without collisions at every width, the letters always there', () => {
    const findings = [700, 632, 520, 400, 358, 300].flatMap((width) => renderSheets(<CurveChart curves={curves} points={operatingPoints} width={width} height={Math.max(300, Math.min(430, width * 0.68))} />).flatMap((sheet) => [...outside(sheet, slack), ...collisions(sheet), ...['A', 'B', 'C', 'D'].filter((letter) => !sheet.words.some((w) => w.text === letter)).map((l) => `no ${l}`)].map((found) => `${width}: ${found}`)));
    expect(findings).toEqual([]);
  });

  it('draws an operating point where its flow and pressure are', () => {
    const markup = renderToStaticMarkup(<CurveChart curves={curves} points={[{ letter: 'A', flow: 0.6, pressure: 150, words: 'half' }]} width={632} height={430} />);
    // Axes run to 1.2 L/s and 300 Pa; the plot from x 44 to 562 and from y 382 to 12: half of each is 303 and 197.
    expect(markup).toContain('cx="303" cy="197"');
  });

  it('prefers the first free place for a label', () => {
    const obstacles = { points: [], boxes: [{ x: 0, y: 0, w: 20, h: 20 }], segments: [], bounds: { x: 0, y: 0, w: 100, h: 100 } };
    expect(placeLabel([{ box: { x: 5, y: 5, w: 10, h: 10 } }, { box: { x: 95, y: 50, w: 20, h: 10 } }, { box: { x: 50, y: 50, w: 20, h: 10 } }], obstacles).choice).toBe(2);
  });

  it('gives an option that changes the need its own band, and says so', () => {
    const need = { value: 5, low: 4.4, high: 5.6 };
    const last = options.at(-1);
    const markup = last === undefined ? '' : renderToStaticMarkup(<IntervalBar row={last} from={0} to={14} need={need} unit="m/s" />);
    expect(markup).toContain('this option changes the need');
    const findings = [640, 480, 360].flatMap((width) => renderSheets(<IntervalRows rows={options} from={0} to={14} unit="m/s" need={need} width={width} />).flatMap((s) => collisions(s)));
    expect(findings).toEqual([]);
    const axes = [400, 260, 200].flatMap((width) => [0.5, 5, 13.8].flatMap((value) => renderSheets(<IntervalAxis from={0} to={14} unit="m/s" need={{ value, low: 0, high: 14 }} needWords="needs 5.0 ± 0.6" width={width} />).flatMap((s) => [...outside(s, slack), ...collisions(s)])));
    expect(axes).toEqual([]);
  });

  it('marks directions beyond the limit by shape and by word', () => {
    const markup = renderToStaticMarkup(<PolarBeforeAfter readings={after} ghost={before} limit={0.3} unit="mm" name="Curl" id="r" />);
    expect(markup).toContain('back-left 0.42, beyond the limit');
    expect(markup.match(/beyond the limit/g)).toHaveLength(1);
    expect(markup.match(/<circle class="d-no-line d-fill-ink"/g)).toHaveLength(7);
    expect(renderToStaticMarkup(<DirectionMarks direction="left" after={{ value: 0.5, low: 0.4, high: 0.6 }} limit={0.3} to={1.5} unit="mm" />)).toContain('beyond the limit');
  });

  it('hatches nothing when every direction is inside', () => {
    const inside = before.map((r) => ({ ...r, value: 0.1, low: 0.05, high: 0.15 }));
    expect(renderToStaticMarkup(<PolarBeforeAfter readings={inside} limit={0.3} unit="mm" name="Curl" id="r" />)).toContain('<path d="" fill="url(#r-lee)"');
  });

  it('shares a budget by size, whatever the sum of the parts', () => {
    const markup = renderToStaticMarkup(<BudgetBar id="b" name="±" width={302} parts={[{ words: 'bag', share: 1 }, { words: 'watch', share: 3 }]} />);
    expect(markup).toContain(`aria-label="±: watch 75${thin}%, bag 25${thin}%"`);
    expect(markup).toContain('width="225"');
  });

  it('shows the change of a chance and the two times with their figures in words', () => {
    expect(renderToStaticMarkup(<ChangeBar was={0.47} is={0.71} name="Fan" />)).toContain(`Fan: 47 → 71${thin}%`);
    const findings = [[112, 78], [600, 3], [5, 5]].flatMap(([now = 0, then = 0]) => renderSheets(<TimeBars now={now} after={then} />).flatMap((s) => [...outside(s, slack), ...collisions(s), ...forbidden(s.markup)]));
    expect(findings).toEqual([]);
  });
});
