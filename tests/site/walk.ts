import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';

/** Sizes that people hold in their hands. */
export const SIZES = { phone: { width: 390, height: 844 }, desktop: { width: 1440, height: 900 } } as const;

/** Rules whose outcome hangs on colours, or on how wide the page is: enough where the same walk is tried under all rules in another size. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block'];
const OF_LAYOUT = [...OF_COLOUR, 'target-size', 'scrollable-region-focusable', 'meta-viewport', 'aria-hidden-focus', 'landmark-one-main', 'page-has-heading-one', 'region', 'heading-order'];

/** Fails when axe finds anything against WCAG 2.2 AA or its own good practice on the page as it stands. */
export async function accessible(page: Page, what: string, rules: 'all' | 'of colour' | 'of layout' = 'all'): Promise<void> {
  // A page that still fetches the case has no heading yet, and nothing to be tried.
  await page.getByRole('heading', { level: 1 }).first().waitFor({ state: 'attached' });
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules === 'all' ? axe.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']) : axe.withRules(rules === 'of colour' ? OF_COLOUR : OF_LAYOUT)).analyze();
  expect.soft(violations.map((violation) => `${violation.id}: ${violation.help} (${violation.nodes.slice(0, 3).map((node) => node.html.slice(0, 120)).join(' | ')})`), `${what}: axe`).toEqual([]);
}

/** Fails when anything stands out of the page to the right. */
export async function fitsWidth(page: Page, what: string): Promise<void> {
  const { wide, inner } = await page.evaluate(() => ({ wide: document.documentElement.scrollWidth, inner: window.innerWidth }));
  expect.soft(wide, `${what}: width`).toBeLessThanOrEqual(inner);
}

/** Collects what must never happen: requests to elsewhere, faults on the page, refused scripts. */
export function watch(page: Page, origin: string): string[] {
  const faults: string[] = [];
  page.on('request', (request) => { if (!request.url().startsWith(origin) && !/^(data|blob):/.test(request.url())) faults.push(`request to ${request.url()}`); });
  page.on('pageerror', (error) => faults.push(`fault: ${error.message}`));
  page.on('console', (message) => { if (message.type() === 'error') faults.push(`console: ${message.text()}`); });
  return faults;
}

/** The row of a match on the start page by its statement. */
export function matchRow(page: Page, statement: string): Locator {
  return page.locator('.match', { has: page.getByRole('heading', { name: statement, exact: true }) });
}

/** Visits the start page once, waits until the whole site is kept on the device, and takes the network away. */
export async function goOffline(page: Page): Promise<void> {
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expect.poll(() => page.evaluate(async () => (await caches.keys()).length)).toBe(1);
  await page.reload();
  await page.context().setOffline(true);
}
