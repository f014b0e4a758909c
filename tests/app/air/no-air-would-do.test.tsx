import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { intervalOf, lettered } from '@/app/air/air-views';
import { OptionsList } from '@/app/air/options-list';
import { MOST_NEEDED_SPEED, needSentences, neededSpeedWords, readAirPath, tooWarmSentence, type AirPathResult } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';

const demo = JSON.parse(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8')) as { readonly print: object };

/** The demo in a chamber of that temperature; PLA holds its shape below 60 °C. */
const inChamber = (chamberTemperature: string): string => JSON.stringify({ ...demo, measured: [], print: { ...demo.print, sides: [], chamberTemperature } });

function resultAt(chamberTemperature: string): AirPathResult {
  const { value, problems } = readAirPath(inChamber(chamberTemperature));
  if (value === undefined) throw new Error(problems.map((problem) => problem.code).join(', '));
  return compareAirOptions(value, [], { samples: 400 });
}

const hot = resultAt('70 °C');
const warm = resultAt('50 ± 4 °C');
const cool = resultAt('26 °C');

describe('a chamber warmer than the plastic can bear', () => {
  it('gives a needed speed that no fan reaches and nothing beyond it, a chance of none, and words', () => {
    expect(hot.options.map((option) => option.neededSpeed)).toEqual(hot.options.map(() => ({ value: MOST_NEEDED_SPEED, low: MOST_NEEDED_SPEED, high: MOST_NEEDED_SPEED })));
    expect(Math.max(...hot.options.map((option) => option.chance))).toBe(0);
    expect(neededSpeedWords(hot.options[0]?.neededSpeed ?? { low: 0, high: 0 }, 'm/s')).toBe('no air would do');
    expect([needSentences(hot.need), tooWarmSentence(hot.need)]).toEqual(['No air would cool this print in time, however long its layers take.', 'The chamber is too warm for this plastic, so no air would do. Open the chamber or cool it.']);
  });

  it('is told as a chance where only some of the samples are too warm, and not where none is', () => {
    const leave = warm.options.find((option) => option.kind === 'leave');
    expect(neededSpeedWords(leave?.neededSpeed ?? { low: 0, high: 0 }, 'm/s')).toMatch(/^\d+(\.\d+)?\sm\/s or more$/u);
    expect(tooWarmSentence(warm.need)).toMatch(/may be too warm/u);
    expect(needSentences(warm.need)).toMatch(/^This print needs \d+\s.* or more on its worst side\./u);
    expect(tooWarmSentence(cool.need)).toBeUndefined();
    expect(needSentences(cool.need)).not.toMatch(/or more|Infinity|∞/u);
  });

  it('leaves the axis of the changes to the speeds that they reach', () => {
    const letters = lettered(hot);
    const { to, needWords } = intervalOf(letters, undefined, 'm/s');
    expect(to).toBeLessThanOrEqual(1.08 * Math.max(...hot.options.map((option) => option.weakestSpeed.high)));
    expect(needWords).toBe('no air would do');
    expect(intervalOf(lettered(cool), undefined, 'm/s').needWords).toBe('needs');
    const markup = renderToStaticMarkup(<OptionsList result={hot} letters={letters} chosen={undefined} unit="m/s" onPick={() => undefined} />);
    expect(markup).toContain('Open the chamber or cool it.');
    expect(markup).not.toMatch(/e\+\d|Infinity|∞|needed (?!100\D)/u);
  });

  it('is said on the command line, without a figure for the need', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'air-')), 'hot.json');
    writeFileSync(file, inChamber('70 °C'));
    const { status, stdout } = spawnSync('node_modules/.bin/tsx', ['app/_cli/airpath.ts', file], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toContain('Open the chamber or cool it.');
    expect(stdout).toContain('no air would do; reaches it in 0');
    expect(stdout).not.toMatch(/e\+\d|Infinity|∞|needs \d/u);
    const asked = spawnSync('node_modules/.bin/tsx', ['app/_cli/airpath.ts', file, '--json'], { encoding: 'utf8' });
    const { need } = JSON.parse(asked.stdout) as { need: { coefficient: { value: unknown; low: unknown; high: unknown } } };
    expect(need.coefficient).toEqual({ value: 'endless', low: 'endless', high: 'endless' });
  });
});
