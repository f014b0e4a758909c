import { describe, expect, it } from 'vitest';
import { isPreferred, readAdvertisement, type FoundFigure } from '@/lib/airflow';
import { toUnit } from '@/lib/units';

/** Field and value of every figure, as `current 0.1 ± 0.01 A`; what would not be ticked stands in brackets. */
function told(line: string): string[] {
  const found = readAdvertisement(line).value ?? [];
  const shown = ({ field, value, plusMinus, unit, name, words }: FoundFigure): string => {
    if (field === 'aside' || unit === undefined || value === undefined) return `${field} ${name ?? words}`;
    const digits = (si: number): number => Number(toUnit(si, unit).toPrecision(4));
    return `${field} ${digits(value)}${plusMinus === undefined ? '' : ` ± ${digits(plusMinus)}`} ${unit}`;
  };
  return found.map((figure) => (isPreferred(figure, found) ? shown(figure) : `(${shown(figure)})`));
}

const codes = (line: string): string[] => readAdvertisement(line).problems.map((problem) => problem.code);

describe('largest, usual and starting figures of an advertisement', () => {
  it.each<[string, string[]]>([
    ['0.16 A max', ['largestCurrent 0.16 A']],
    ['max. 0.16 A', ['largestCurrent 0.16 A']],
    ['Imax = 160 mA', ['largestCurrent 160 mA']],
    ['rated 0.10 A, max 0.16 A', ['current 0.1 A', 'largestCurrent 0.16 A']],
    ['0.16 A max, 0.10 A typ', ['largestCurrent 0.16 A', 'current 0.1 A']],
    ['0.10 A max 0.16 A', ['current 0.1 A', 'largestCurrent 0.16 A']],
    ['0.10 A (typ.) 0.16 A (max.)', ['current 0.1 A', 'largestCurrent 0.16 A']],
    ['0.10A (max. 0.16A)', ['current 0.1 A', 'largestCurrent 0.16 A']],
    ['starting current 0.3 A', ['startCurrent 0.3 A']],
    ['0.1 A rated, 0.3 A inrush', ['current 0.1 A', 'startCurrent 0.3 A']],
    ['static pressure max 6.2 mmH2O', ['maxPressure 6.2 mmH2O']],
    ['5.36 CFM max', ['freeFlow 5.36 CFM']],
    ['5.36 CFM max 6.2 mmH2O max', ['freeFlow 5.36 CFM', 'maxPressure 6.2 mmH2O']],
    // The line says itself on which side its words stand.
    ['24V 0.16A max 6000rpm 5.36CFM max', ['voltage 24 V', 'largestCurrent 0.16 A', 'speed 6000 rpm', 'freeFlow 5.36 CFM']],
    ['rated 24 V max 0.16 A 6000 rpm', ['voltage 24 V', 'largestCurrent 0.16 A', 'speed 6000 rpm']],
    ['24 V max 0.16 A', ['voltage 24 V', 'largestCurrent 0.16 A']],
    ['rated 12 V; start voltage 7 V; 0.1 A', ['voltage 12 V', 'aside 7 V', 'current 0.1 A']],
    // Minutes of a unit are no least value.
    ['at 9 m3/min 0.16 A', ['freeFlow 9 m³/min', 'current 0.16 A']],
  ])('are told apart: %s', (line, figures) => {
    expect(told(line)).toEqual(figures);
    expect(codes(line)).toEqual([]);
  });

  it('do not contradict each other, but two of the same sort do', () => {
    expect(codes('rated 0.10 A, max 0.16 A')).toEqual([]);
    expect(codes('typ 5.0 CFM, max 5.36 CFM')).toEqual([]);
    expect(codes('rated 0.10 A, running 0.16 A')).toEqual(['stated-twice']);
    expect(codes('max 0.10 A, max 0.16 A')).toEqual(['stated-twice']);
  });

  it('are taken by what the field is: free flow and pressure the largest, speed the usual one', () => {
    expect(told('typ 5.0 CFM, max 5.36 CFM, min 4.5 CFM')).toEqual(['(freeFlow 5 CFM)', 'freeFlow 5.36 CFM', '(freeFlow 4.5 CFM)']);
    expect(told('max 6600 rpm, rated 6000 rpm')).toEqual(['(speed 6600 rpm)', 'speed 6000 rpm']);
  });
});

describe('ranges and tolerances', () => {
  it.each<[string, string[]]>([
    ['6000 rpm ±10 %', ['speed 6000 ± 600 rpm']],
    ['6000rpm(±15%)', ['speed 6000 ± 900 rpm']],
    ['6000 +/- 10% r/min', ['speed 6000 ± 600 rpm']],
    ['6000±600 rpm', ['speed 6000 ± 600 rpm']],
    ['0.07 ± 0.01 A', ['current 0.07 ± 0.01 A']],
    ['5.0–5.4 CFM', ['freeFlow 5.2 ± 0.2 CFM']],
    ['150 to 170 Pa', ['maxPressure 160 ± 10 Pa']],
    // What the supply may be is not what the rating is unsure of.
    ['24 V (4.5-26.4 V)', ['voltage 24 V', 'aside 4.5-26.4 V']],
    ['24 V ±10 %', ['voltage 24 V']],
    // No ranges: a size or a name before a dash.
    ['50x15-24V', ['frame 5015', 'voltage 24 V']],
    ['5015-24V 0.1A', ['frame 5015', 'voltage 24 V', 'current 0.1 A']],
    ['B2-24V', ['voltage 24 V']],
  ])('become a plus-minus where they speak of the figure: %s', (line, figures) => {
    expect(told(line)).toEqual(figures);
    expect(codes(line)).toEqual([]);
  });

  it('of volts alone leave the rating open, and that is said', () => {
    expect(told('operating voltage 4.5-26.4 V, 0.1 A')).toEqual(['aside 4.5-26.4 V', 'current 0.1 A']);
    expect(codes('operating voltage 4.5-26.4 V, 0.1 A')).toEqual(['no-rated-voltage']);
  });
});

describe('signs of all sorts', () => {
  it.each<[string, string[]]>([
    ['5,000 rpm', ['speed 5000 rpm']], ['5.000 rpm', ['speed 5000 rpm']], ['5 000 rpm', ['speed 5000 rpm']], ['5\u202f000 min⁻¹', ['speed 5000 rpm']], ['12,500 r/min', ['speed 12500 rpm']],
    ['9.1 m³/h', ['freeFlow 9.1 m³/h']], ['9.1 ㎥/h', ['freeFlow 9.1 m³/h']], ['5.36 ft³/min', ['freeFlow 5.36 CFM']],
    ['6.2 mmH₂O', ['maxPressure 6.2 mmH2O']], ['6.2 ㎜ H₂O', ['maxPressure 6.2 mmH2O']], ['0.244 inH₂O', ['maxPressure 0.244 inH2O']], ['0,244" H2O', ['maxPressure 0.244 inH2O']],
    ['２４Ｖ ０．１Ａ', ['voltage 24 V', 'current 0.1 A']], ['.10A', ['current 0.1 A']], ['max.0.16A', ['largestCurrent 0.16 A']],
  ])('are read: %s', (line, figures) => {
    expect(told(line)).toEqual(figures);
  });

  it('keep a speed apart from the number before it', () => {
    expect(told('frame 4010 6000 rpm')).toEqual(['frame 4010', 'speed 6000 rpm']);
  });

  it('take no longer for a line that was made to be slow', () => {
    for (const line of ['1'.repeat(2000), '1.'.repeat(1000), '1 ± '.repeat(500), `${'9 - '.repeat(490)}9 V`, '1 000 '.repeat(330), `${' '.repeat(1990)}1 V`]) {
      const start = performance.now();
      readAdvertisement(line);
      expect(performance.now() - start).toBeLessThan(500);
    }
  });
});

describe('units in brackets, as in the heads of a table', () => {
  it.each<[string, string[]]>([
    ['Rated voltage (V): 24, current (A): 0.10, speed (RPM): 6000, air volume (CFM): 5.36', ['voltage 24 V', 'current 0.1 A', 'speed 6000 rpm', 'freeFlow 5.36 CFM']],
    ['Voltage(VDC) 24 | Current(A) 0.10 | Speed(RPM) 6,000±10% | Flow(m³/h) 9.1 | Static pressure[mmH2O] 6.2', ['voltage 24 V', 'current 0.1 A', 'speed 6000 ± 600 rpm', 'freeFlow 9.1 m³/h', 'maxPressure 6.2 mmH2O']],
    ['24(V) 0.10(A) 6000(RPM) 5.36(CFM)', ['voltage 24 V', 'current 0.1 A', 'speed 6000 rpm', 'freeFlow 5.36 CFM']],
    ['Operating voltage (V) 20-26.4; rated voltage (V) 24; max current (A) 0.16', ['aside 20-26.4 V', 'voltage 24 V', 'largestCurrent 0.16 A']],
    ['0.10 A (V 24)', ['current 0.1 A']],
    ['38 dB(A) 2.4 W', ['noise 38 dB(A)', 'power 2.4 W']],
    ['voltage (V) 24 V, 0.1 A', ['voltage 24 V', 'current 0.1 A']],
  ])('belong to the number that the line gives them: %s', (line, figures) => {
    expect(told(line)).toEqual(figures);
  });

  it('cost no time on a line made to be slow', () => {
    const begun = performance.now();
    readAdvertisement(`${'(V'.repeat(400)}${'1,'.repeat(500)}`.slice(0, 1990));
    expect(performance.now() - begun).toBeLessThan(250);
  });
});
