import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { placesToTry } from '@/app/air/form/focus-place';
import { SheetForm } from '@/app/air/form/sheet-form';
import { DEMO_SHEET, withAt, type Sheet } from '@/app/air/sheet';
import { readAirPath } from '@/lib/airflow';

const marked = (sheet: Sheet): Set<string> => new Set([...renderToStaticMarkup(<SheetForm sheet={sheet} problems={[]} onChange={() => undefined} />).matchAll(/data-place="([^"]+)"/gu)].map(([, place = '']) => place));

describe('from a problem to its field', () => {
  it('tries the place itself, then one step less each time', () => {
    expect(placesToTry('fan.points[2].flow')).toEqual(['fan.points[2].flow', 'fan.points[2]', 'fan.points', 'fan']);
    expect(placesToTry('the ± of outlets[1].width')).toEqual(['outlets[1].width', 'outlets[1]', 'outlets']);
    expect(placesToTry('fan.points, line 3')).toEqual(['fan.points', 'fan']);
    expect(placesToTry('')).toEqual([]);
  });

  it('has a field for the very place of every slip that can be typed into the form', () => {
    const pair = withAt(withAt(DEMO_SHEET, ['fan', 'count'], 2), ['fan', 'second'], { kind: 'axial', freeFlow: '1 L/s' });
    const fields = marked(pair);
    expect(fields.size).toBeGreaterThan(60);
    const typed = [...fields].filter((place) => /(width|height|Flow|flow|[pP]ressure|[sS]peed|oltage|upply|urrent|ength|iameter|istance|angle|radius|gap|emperature|ayerTime|ayerHeight|altitude|duty|value)$/u.test(place));
    expect(typed.length).toBeGreaterThan(40);
    const lost = typed.flatMap((place) => {
      const keys = place.split(/[.[\]]+/u).filter(Boolean).map((key) => (/^\d+$/u.test(key) ? Number(key) - 1 : key));
      const { problems } = readAirPath(JSON.stringify(withAt(pair, keys, 'much')));
      const stops = problems.filter((problem) => problem.level === 'stop').map((problem) => problem.where);
      return stops.includes(place) ? [] : [`${place}: told at ${stops.join(', ')}`];
    });
    expect(lost).toEqual([]);
  });

  it('finds a field for what is missing as well: every place of a note leads somewhere', () => {
    const { problems } = readAirPath(JSON.stringify({ ...DEMO_SHEET, fan: { second: {} }, print: {}, duct: {} }));
    const fields = marked({ ...DEMO_SHEET, fan: { second: {} }, print: {}, duct: {} });
    expect(problems.length).toBeGreaterThan(8);
    const leads = (where: string): boolean => placesToTry(where).some((place) => [...fields].some((field) => field === place || field.startsWith(`${place}.`) || field.startsWith(`${place}[`)));
    expect(problems.filter((problem) => !leads(problem.where)).map((problem) => problem.where)).toEqual([]);
  });
});
