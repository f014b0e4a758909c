import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { caseSchema, type CaseFile, type Round } from '@/lib/cases';
import { diagnose } from '@/lib/diagnosis';
import { UnlessDanger } from '../../app/_case/danger-note';
import { dangersNow, rightsDanger } from '../../app/_case/dangers-now';
import { CauseTree } from '../../app/case/cause-tree';
import { DangerFirst } from '../../app/case/danger-first';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('dangers: the content does not read; npm run check:content says why');

const fileOf = (told: object): CaseFile => caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'danger', ...told });
const PLUG = 'hot-smell-or-brown-plug';
const seen = (symptom: string, state = 'seen', round = 1): object => ({ symptom, state, round });
const found = (observations: object[], rounds: Round[] = [{ number: 1 }], state = 'open'): string[] => dangersNow(fileOf({ observations, rounds, state }), knowledge).map(({ id }) => id);

describe('what must not run now', () => {
  it('stands by the last word on it', () => {
    expect(found([seen('curled-edges')])).toEqual([]);
    expect(found([seen('curled-edges'), seen(PLUG)])).toEqual([PLUG]);
    expect(found([seen(PLUG, 'cant-tell')])).toEqual([]);
    expect(found([seen(PLUG), seen(PLUG, 'not-seen', 2)])).toEqual([]);
    expect(found([seen(PLUG, 'not-seen', 2), seen(PLUG)])).toEqual([]);
    expect(found([seen(PLUG), seen(PLUG, 'seen', 2)])).toEqual([PLUG]);
  });

  it('gives way to the proof once a change is fitted, stands again after a proof in vain, and is none of a closed case', () => {
    const fitted: Round = { number: 1, remedy: 'replace-bed-connector', fittedOn: '2026-11-20' };
    expect(found([seen(PLUG)], [fitted])).toEqual([]);
    expect(found([seen(PLUG)], [{ ...fitted, verdict: 'no-change' }, { number: 2 }])).toEqual([PLUG]);
    expect(found([seen(PLUG)], [{ ...fitted, verdict: 'cured' }], 'closed')).toEqual([]);
  });

  it('says what to do at once, and leads to a change, not to a check', () => {
    const file = fileOf({ observations: [seen(PLUG)], rounds: [{ number: 1 }] });
    const markup = renderToStaticMarkup(<DangerFirst dangers={dangersNow(file, knowledge)} file={file} />);
    expect(markup).toMatch(/Do this first.*[Ss]witch off and unplug/s);
    expect(markup).toContain('href="/case/decide"');
    expect(markup).not.toContain('/bench/');
    expect(renderToStaticMarkup(<DangerFirst dangers={dangersNow(file, knowledge)} file={{ ...file, rounds: [{ number: 1, remedy: 'replace-bed-connector' }] }} />)).toContain('href="/case/fit"');
  });

  it('stands in place of whatever proposes a check, and only then', () => {
    const page = (observations: object[], brief = false): string => renderToStaticMarkup(<UnlessDanger file={fileOf({ observations })} knowledge={knowledge} brief={brief}><a href="/bench/bag-fill">Fill a bag</a></UnlessDanger>);
    expect(page([seen('curled-edges')])).toBe('<a href="/bench/bag-fill">Fill a bag</a>');
    const instead = page([seen('curled-edges'), seen(PLUG)]);
    expect(instead).not.toContain('/bench/');
    expect(instead).toMatch(/[Ss]witch off and unplug.*no check is proposed.*href="\/case".*What to do first/s);
    expect(page([seen(PLUG)], true)).toMatch(/^<p class="no-check">.*href="#next"/);
  });

  it('takes the checks out of the rows of causes and out of what to do if it is none of them', () => {
    const rows = (observations: object[]): string => {
      const file = fileOf({ observations });
      const diagnosis = diagnose(file, knowledge, { copies: 0 });
      if (diagnosis.kind !== 'diagnosis') throw new Error('dangers: got no ranking, expected one');
      return renderToStaticMarkup(<CauseTree diagnosis={diagnosis} banded={undefined} weights={undefined} was={diagnosis.causes} next={undefined} step={undefined} file={file} knowledge={knowledge} />);
    };
    expect(rows([seen('curled-edges')])).toMatch(/settled by:.*print the same file again/s);
    expect(rows([seen('curled-edges'), seen(PLUG)])).not.toMatch(/settled by:|print the same file again/);
  });

  it('leaves changes that cure what shows it and need no print before they are fitted; each danger has one', () => {
    const dangers = (id: string): ReturnType<typeof dangersNow> => dangersNow(fileOf({ observations: [seen(id)] }), knowledge);
    const may = (remedy: string, danger: string): boolean => rightsDanger(knowledge.remedies[remedy] ?? { cures: {} }, dangers(danger));
    expect(may('replace-bed-connector', PLUG)).toBe(true);
    expect(may('lower-part-fan', PLUG)).toBe(false);
    // Its steps print and measure in turn; and five degrees less hide a loose sensor and do not seat it.
    expect(may('cool-the-board', PLUG)).toBe(false);
    expect(may('print-cooler', 'heats-without-limit')).toBe(false);
    expect(may('seat-the-sensor', 'heats-without-limit')).toBe(true);
    const all = Object.values(knowledge.symptoms).filter(({ danger }) => danger !== undefined);
    expect(all.length).toBeGreaterThanOrEqual(3);
    expect(all.filter(({ id }) => !Object.keys(knowledge.remedies).some((remedy) => may(remedy, id)))).toEqual([]);
  });
});
