/** A figure and its unit, or a ± and its figure. */
const FIGURE_AND_UNIT = /(\d) (?=(?:%|°C|°|K|s|min|minutes|hours|h|mm|cm|m|mm³\/s|mm\/s|mm\/s²|m\/s|L\/s|V|A|W|N|g|L|Pa|kPa|Hz)(?![\p{L}\p{N}]))|(±) (?=\d)/gu;

/** The text with a space that does not break between a figure and its unit: "70 % of 5 mm" stays two pieces, not four. */
export function keptTogether(text: string): string {
  return text.replace(FIGURE_AND_UNIT, '$1$2\u00a0');
}
