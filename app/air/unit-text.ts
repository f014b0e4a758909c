/** The text without the unit that its field shows beside it. `bare('14 ± 0.2 mm', 'mm')` is `14 ± 0.2`. */
export function bare(text: string, unit: string): string {
  return text.endsWith(unit) && !text.slice(0, -unit.length).includes(unit) ? text.slice(0, -unit.length).replace(/ $/, '') : text;
}

/** The text with the field's unit unless another one was typed. `withUnit('14', 'mm')` is `14 mm`, `withUnit('0.5 in', 'mm')` stays. */
export function withUnit(text: string, unit: string): string {
  return /[a-zµ°"′″'%]\s*$/i.test(text.trim()) ? text : `${text} ${unit}`;
}
