/** Path of an installed browser, or undefined when the test runner's own one is to be used. */
export function browserPath(): string | undefined;
export function installBrowser(): Promise<void>;
export const CHROMIUM_WORDS: readonly string[];
