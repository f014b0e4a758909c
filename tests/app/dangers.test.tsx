import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { caseSchema, type CaseFile, type Round } from '@/lib/cases';
import { dangersNow } from '../../app/_case/dangers-now';
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
});
