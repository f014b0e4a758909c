import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT_PER_MINUTE, LARGEST_TABLE_FILE, readFanPointsText, readTableFile } from '@/lib/airflow';

const context = { where: 'the table', kind: 'blower', stallMarked: false } as const;
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const told = (bytes: Uint8Array): string[] => readTableFile('fan.csv', bytes).problems.map(({ code, level, where }) => `${level} ${code} ${where}`);

/** Flow in CFM and pressure in mmH2O of every point, to three digits. */
function points(text: string): number[][] {
  const { value, problems } = readFanPointsText(text, context);
  expect(problems).toEqual([]);
  return (value ?? []).map(({ flow, pressure }) => [flow / CUBIC_FOOT_PER_MINUTE, pressure / 9.80665].map((each) => Number(each.toFixed(3))));
}

const CURVE = [[0, 12.5], [2.1, 9.8], [4.8, 0]];

describe('a table of a fan as text', () => {
  it.each([
    ['semicolons and decimal commas', 'flow (CFM); pressure (mmH2O)\n0; 12,5\n2,1; 9,8\n4,8; 0\n'],
    ['commas and decimal points', 'flow (CFM),pressure (mmH2O)\n0,12.5\n2.1,9.8\n4.8,0'],
    ['tabs and decimal commas', 'flow (CFM)\tpressure (mmH2O)\n0\t12,5\n2,1\t9,8\n4,8\t0'],
    ['commas, with decimal commas in quotes', '"flow (CFM)","pressure (mmH2O)"\n"0","12,5"\n"2,1","9,8"\n"4,8","0"'],
    ['a line that names the separator, the mark of UTF-8, and line ends of two signs', '\uFEFFsep=;\r\nflow (CFM);pressure (mmH2O)\r\n0;12,5\r\n2,1;9,8\r\n4,8;0\r\n'],
    ['line ends of an old kind', 'flow (CFM);pressure (mmH2O)\r0;12,5\r2,1;9,8\r4,8;0'],
    ['other columns beside, and a separator at the end of every line', 'no;static pressure [mmH2O];flow [CFM];rpm;\n1;12,5;0;6000;\n2;9,8;2,1;6000;\n3;0;4,8;6000;'],
    ['units in the cells', 'flow;pressure\n0 CFM;12,5 mmH2O\n2,1 CFM;9,8 mmH2O\n4,8 CFM;0 mmH2O'],
  ])('is read with %s', (_, text) => {
    expect(points(text)).toEqual(CURVE);
  });

  it('is not cut at a comma that may be decimal: the line is named', () => {
    const { value, problems } = readFanPointsText('flow (CFM),pressure (mmH2O)\n0,12.5\n2,1,9,8\n4,8,0', context);
    expect(value).toBeUndefined();
    expect(problems.map(({ code, where }) => [code, where])).toEqual([['more-cells', 'the table, line 3']]);
    expect(problems[0]?.next).toMatch(/semicolons or tabs/u);
  });

  it('is told when it is too long, instead of losing its end', () => {
    const long = `flow (CFM);pressure (mmH2O)\n${Array.from({ length: 4000 }, (_, k) => `${k / 1000};${4000 - k}`).join('\n')}`;
    expect(readFanPointsText(long, context).problems.map((problem) => problem.code)).toEqual(['too-long']);
  });
});

describe('a file with the table of a fan', () => {
  const text = 'flow (m³/h);pressure (Pa)\n0;120\n2,1;80\n4,8;0\n';
  const codes = Array.from(text, (sign) => sign.charCodeAt(0));
  const utf16 = (big: boolean): Uint8Array => Uint8Array.from([0xfe, 0xff, ...codes.flatMap((code) => [code >> 8, code & 255])].flatMap((byte, k, all) => (big ? byte : (all[k % 2 === 0 ? k + 1 : k - 1] ?? 0))));

  it('is read in UTF-8 and both orders of UTF-16 without a word', () => {
    for (const bytes of [utf8(text), utf16(true), utf16(false)]) expect(readTableFile('fan.csv', bytes)).toEqual({ value: text, problems: [] });
    expect(readTableFile('fan.csv', utf8(`\uFEFF${text}`)).value).toBe(text);
  });

  it('is read in the letters of Western spreadsheets, with a word about them', () => {
    // ³ is one byte, B3, in Windows-1252 and in ISO 8859-1.
    const { value, problems } = readTableFile('fan.csv', Uint8Array.from(codes));
    expect(value).toBe(text);
    expect(problems.map(({ code, level }) => [code, level])).toEqual([['other-encoding', 'note']]);
    expect(readFanPointsText(value ?? '', context).value).toHaveLength(3);
  });

  it('is refused with a reason when it is empty, too large or no text', () => {
    expect(told(utf8(''))).toEqual(['stop empty fan.csv']);
    expect(told(utf8(' \r\n\t'))).toEqual(['stop empty fan.csv']);
    expect(told(new Uint8Array(LARGEST_TABLE_FILE + 1).fill(32))).toEqual(['stop too-large fan.csv']);
    expect(told(Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0]))).toEqual(['stop no-text fan.csv']);
    expect(readTableFile('fan.xlsx', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0])).problems[0]?.what).toMatch(/spreadsheet/u);
    expect(told(Uint8Array.from([0x25, 0x50, 0x44, 0x46, 0x2d]))).toEqual(['stop no-text fan.csv']);
    expect(told(Uint8Array.from([102, 108, 0, 1, 2, 111, 119]))).toEqual(['stop no-text fan.csv']);
  });
});
