import { expect, test } from '@playwright/test';
import { CASE_TO_TIME } from '../../app/_cli/bench/case-to-time';
import { SIZES, accessible, fitsWidth, goOffline, watch } from './walk';

for (const [name, viewport] of Object.entries(SIZES)) {
  test(`the whole plan is worked out beside the page${name === 'phone' ? ', without a network,' : ''} and begins as the case page says: ${name}`, async ({ browser, baseURL }) => {
    const context = await browser.newContext({ viewport, serviceWorkers: name === 'phone' ? 'allow' : 'block' });
    const page = await context.newPage();
    if (name === 'phone') await goOffline(page);
    else await page.goto('/');
    const faults = watch(page, baseURL ?? '');
    await page.getByLabel('Open a saved case').setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(CASE_TO_TIME)) });
    await page.waitForURL('**/case/');
    const step = page.locator('#next .next-title');
    await expect(step).not.toHaveText('Reckoning', { timeout: 20_000 });
    const told = (await step.innerText()).trim();
    await page.goto(`${baseURL ?? ''}/case/plan/`);
    await expect(page.getByText(/of your time on average/)).toBeVisible({ timeout: 30_000 });
    await expect(page.locator('.plan-deed').first()).toHaveText(told);
    expect(await page.locator('.plan-branches .plan-branches .plan-deed').count()).toBeGreaterThan(2);
    await fitsWidth(page, `plan ${name}`);
    await accessible(page, `plan ${name}`, name === 'phone' ? 'all' : 'of layout');
    // Next tells on the console that it cannot ask ahead; nothing on the page may fail for that, and nobody else is asked.
    expect(faults.filter((fault) => !fault.startsWith('console:'))).toEqual([]);
    await context.close();
  });
}
