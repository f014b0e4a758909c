import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAirPath } from '@/lib/airflow';
import { causesOnPath, compareAirOptions, expectedReadings } from '@/lib/decision';

const { value: path } = readAirPath(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8'));
if (path === undefined) throw new Error('the demo path should read');
const result = compareAirOptions(path);

describe('the air path as evidence', () => {
  it('names checks and causes that the knowledge base has', () => {
    const absent = [
      ...expectedReadings(result).map(({ check }) => `content/checks/${check}.mdx`),
      ...causesOnPath(result).map(({ cause }) => `content/causes/${cause}.mdx`),
    ].filter((file) => !existsSync(file));
    expect(absent).toEqual([]);
    expect(causesOnPath(result).length).toBeGreaterThan(4);
  });

  it('expects the weaker outlet to read what it was read', () => {
    const weakest = expectedReadings(result).find(({ check }) => check === 'outlet-speed-weakest')?.expected;
    expect([(weakest?.low ?? 9) < 3.0 + 0.6, (weakest?.high ?? 0) > 3.0 - 0.6]).toEqual([true, true]);
    const share = expectedReadings(result).find(({ check }) => check === 'outlet-share-weaker')?.expected.value;
    expect(share).toBeGreaterThan(0.4);
    expect(share).toBeLessThan(0.65);
  });

  it('never finds a cure of loss that leaves the path worse off than sampling allows', () => {
    const worse = causesOnPath(result).filter(({ cause, chanceNow, chanceWhenCured }) => ['leaking-duct-seal', 'outlet-misaimed', 'melt-too-hot', 'layers-too-quick'].includes(cause) && chanceWhenCured < chanceNow - 0.03);
    expect(worse).toEqual([]);
  });
});
