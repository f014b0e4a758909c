import { describe, expect, it } from 'vitest';
import { placeInWords } from '@/app/air/place-words';
import { readAirPath } from '@/lib/airflow';

describe('a place in an air path', () => {
  it.each([
    ['outlets[2].distance', 'outlet 2, distance to the nozzle'],
    ['outlets[1].branch.section.width', 'outlet 1, branch, section, width'],
    ['candidates[1].fan.current', 'offer 1, fan, current on its label'],
    ['the ± of duct.length', 'the ± of duct, length'],
    ['fan.points, line 3', 'fan, points of the curve, line 3'],
    ['fan', 'fan'],
    ['the air path', 'the air path'],
    ['the table[2].flow', 'the table, row 2, flow'],
    ['the table, line 3', 'the table, line 3'],
  ])('%s is said in words', (where, words) => {
    expect(placeInWords(where)).toBe(words);
  });

  it('is said in words wherever the reader finds something wrong or missing', () => {
    const wrong = { schema: 'leeward/air-path', version: 1, fan: { voltage: 'x', current: 'x', speed: 'x', freeFlow: 'x', maxPressure: 'x' }, duct: { length: 'x', section: { width: 'x', height: 'x' }, leaks: [{ gap: 'x', length: 'x' }] }, outlets: [{ width: 'x', height: '0 mm', distance: 'x', tilt: 'x', direction: 'x', aimError: 'x', branch: { length: 'x', section: { width: 'x' } } }], print: { layerTime: 'x', layerHeight: 'x', lineWidth: 'x', nozzleTemperature: 'x' }, air: { temperature: 'x' }, measured: [{ what: 'x', value: 'x' }] };
    const places = [wrong, {}].flatMap((sheet) => readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, ...sheet })).problems.map((problem) => problem.where));
    expect(places.length).toBeGreaterThan(20);
    // Neither brackets nor joined words are left.
    expect(places.map(placeInWords).filter((words) => /[[\]]|[a-z][A-Z]|\w\.\w/u.test(words))).toEqual([]);
  });
});
