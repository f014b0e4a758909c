import { rowsAt, textAt, valueAt, type Sheet } from './sheet';

/** A fan on offer: where it stands in the list of offers, from 0, and its name. */
export interface FanOnOffer {
  readonly index: number;
  readonly name: string;
}

/** The fans on offer in a sheet. */
export function fansOnOffer(sheet: Sheet): FanOnOffer[] {
  return rowsAt(sheet, ['candidates']).flatMap((row, index) => (valueAt(row, ['fan']) === undefined ? [] : [{ index, name: textAt(row, ['name']) || `fan ${index + 1}` }]));
}

/** What is kept of a fan on offer once it is chosen: its figures and the output that is to drive it, as an air-path file of its own. */
export function fanSheetOf(sheet: Sheet, { index, name }: FanOnOffer): Sheet {
  const fan = Object(valueAt(sheet, ['candidates', index, 'fan'])) as object;
  const output = valueAt(sheet, ['output']);
  return { schema: 'leeward/air-path', version: 1, title: name, fan: { name, ...fan }, ...beliefOf(valueAt(sheet, ['candidates', index])), ...(output === undefined ? {} : { output }) };
}

/** What stands beside a fan on offer about its claim: trusted figures, and whether to reckon with them. They go along with the fan. */
export function beliefOf(offer: unknown): Sheet {
  return Object.fromEntries((['trusted', 'reckonWithBand'] as const).flatMap((key) => { const value = valueAt(offer, [key]); return value === undefined ? [] : [[key, value]]; }));
}

/** The fan that an option of the comparison brings: options are named after the offers that they fit, `candidate-2+candidate-3`. */
export function fanOfOption(sheet: Sheet, option: string): FanOnOffer | undefined {
  return fansOnOffer(sheet).find(({ index }) => option.split('+').includes(`candidate-${index + 1}`));
}
