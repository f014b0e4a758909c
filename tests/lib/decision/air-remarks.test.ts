import { describe, expect, it } from 'vitest';
import { readAirPath } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';

/** A path as somebody would type it; `points` of the fan's curve as flow (L/s) and pressure (Pa). */
function remarks(points: readonly (readonly [number, number])[], mouth: { readonly width: string; readonly height: string }, stalls: boolean): { about: string; sentence: string }[] {
  const read = readAirPath(JSON.stringify({
    schema: 'leeward/air-path', version: 1, title: 'stall',
    fan: { name: 'axial', kind: 'axial', claim: 'data-sheet', outlet: { width: '38 mm', height: '38 mm' }, points: points.map(([flow, pressure]) => ({ flow: `${flow} L/s`, pressure: `${pressure} Pa` })), ...(stalls ? { stall: true } : {}) },
    duct: { mode: 'static', section: { width: '30 mm', height: '30 mm' }, length: '40 mm' },
    outlets: [{ name: 'a', ...mouth, ending: 'land', distance: '15 mm' }],
    print: { polymer: 'PLA', layerTime: '11 s', layerHeight: '0.2 mm', nozzleTemperature: '210 °C', chamberTemperature: '26 °C' },
  }));
  if (read.value === undefined) throw new Error(`stall: the path does not read: ${JSON.stringify(read.problems)}`);
  return compareAirOptions(read.value, [], { samples: 400 }).remarks.map(({ about, sentence }) => ({ about, sentence }));
}

const STALLING = [[0, 60], [0.3, 38], [0.5, 30], [0.8, 40], [1.1, 36], [1.6, 20], [2.2, 0]] as const;
const FALLING = [[0, 60], [0.5, 52], [1.1, 36], [1.6, 20], [2.2, 0]] as const;
const about = (found: readonly { about: string }[]): string[] => found.map((remark) => remark.about);

describe('what the figures of an air path rest on', () => {
  it('is told where a fan may stall: a duct that meets its dip, and not one that meets only its falling side', () => {
    // ½·1.2·(1.5)·(q/A)²: 100 mm² asks 36 Pa at 0.63 L/s, beside the dip; 400 mm² asks 36 Pa at 2.5 L/s, far behind it.
    const dip = remarks(STALLING, { width: '20 mm', height: '5 mm' }, true);
    expect(about(dip)).toContain('stall');
    expect(dip.find((remark) => remark.about === 'stall')?.sentence).toMatch(/may stall|works in its stall/);
    expect(about(remarks(STALLING, { width: '20 mm', height: '20 mm' }, true))).not.toContain('stall');
  });

  it('is not told of a curve that only falls', () => {
    expect(about(remarks(FALLING, { width: '20 mm', height: '5 mm' }, false))).not.toContain('stall');
  });

  it('is told where jets are slower than the law of heat transfer was measured for: Re 3000 on twice the width', () => {
    // 36 Pa drive 6 m/s at most: 2·5 mm·6/1.9e-5 is 3200, 2·2 mm·6/1.9e-5 is 1300.
    expect(about(remarks(FALLING, { width: '20 mm', height: '2 mm' }, false))).toContain('law');
    expect(remarks(FALLING, { width: '20 mm', height: '2 mm' }, false).find((remark) => remark.about === 'law')?.sentence).toContain('3000 and more');
    expect(about(remarks(FALLING, { width: '20 mm', height: '12 mm' }, false))).not.toContain('law');
  });
});
