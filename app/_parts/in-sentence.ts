/** A title inside a sentence: small at the start, unless it starts with a short form or an axis ("PETG", "Z"); its own full stop goes. */
export function inSentence(title: string): string {
  const bare = title.replace(/\.$/, '');
  return /^(?:[A-Z][a-z]|A )/.test(bare) ? bare.charAt(0).toLowerCase() + bare.slice(1) : bare;
}
