import { expect, test } from '@playwright/test';
import { SIZES, accessible, fitsWidth, matchRow, watch } from './walk';

/** A case on machine no. 3 that a proof showed to be cured: its part fan was too weak. */
const PROVEN = {
  schema: 'leeward/case', version: 1, id: 'proven', state: 'closed', machine: { name: 'no. 3', kinematics: 'moving-bed' }, print: { name: 'first hinge', material: 'PLA' },
  observations: [{ symptom: 'curled-edges', state: 'seen', round: 1 }, { symptom: 'curled-edges', state: 'not-seen', round: 2 }],
  findings: [{ check: 'part-fan-free-flow', result: { quantity: 'ratio', value: 0.4, plusMinus: 0.04, unit: '' }, round: 1 }],
  rounds: [{ number: 1, remedy: 'fit-stronger-part-fan', fittedOn: '2026-11-20', verdict: 'cured', verdictOn: '2026-11-21' }],
};

for (const [name, viewport] of Object.entries(SIZES)) {
  test(`a cured case makes its cause likelier in the next case on that machine, says so, and can be left out: ${name}`, async ({ browser, baseURL }) => {
    const context = await browser.newContext({ viewport, serviceWorkers: 'block' });
    const page = await context.newPage();
    const faults = watch(page, baseURL ?? '');
    await page.goto('/');
    await page.getByLabel('Open a saved case').setInputFiles({ name: 'proven.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(PROVEN)) });
    await page.waitForURL('**/case/');
    for (const place of ['plan', 'decide']) {
      await page.goto(`${baseURL ?? ''}/case/${place}/`);
      await expect(page.getByRole('heading', { name: 'This case is closed' })).toBeVisible();
    }
    await page.goto(`${baseURL ?? ''}/case/log/`);
    await page.getByRole('button', { name: 'New case on this machine' }).click();
    await page.waitForURL((url) => url.pathname === '/');
    await page.getByRole('textbox', { name: 'What went wrong?' }).fill('edges lift up on the left');
    await matchRow(page, 'Edges of steep undersides curl up').getByRole('button', { name: 'Seen', exact: true }).first().click();
    await page.getByRole('button', { name: 'Open the case' }).click();
    await page.waitForURL('**/case/');

    await expect(page.getByText('Your casebook: 1 cured case on this machine')).toBeVisible();
    await expect(page.getByText(/likelier from the start: the part fan moves too little air \(×/)).toBeVisible();
    const shares = page.locator('.cause-row', { hasText: 'The part fan moves too little air' }).locator('b').first();
    const counted = Number.parseFloat(await shares.innerText());
    await fitsWidth(page, `casebook ${name}`);
    await accessible(page, `casebook ${name}`);
    await page.getByRole('button', { name: 'Leave the casebook out' }).click();
    await expect(page.getByText('left out of the ranking')).toBeVisible();
    await expect.poll(async () => Number.parseFloat(await shares.innerText())).toBeLessThan(counted);
    await page.reload();
    await expect(page.getByText('left out of the ranking')).toBeVisible();
    await page.getByRole('button', { name: 'Count the casebook' }).click();
    await expect.poll(async () => Number.parseFloat(await shares.innerText())).toBe(counted);
    expect(faults).toEqual([]);
    await context.close();
  });
}

test('a cured case that comes back goes on in a round of its own, and is no longer counted as cured', async ({ page, baseURL }) => {
  await page.goto('/');
  await page.getByLabel('Open a saved case').setInputFiles({ name: 'proven.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(PROVEN)) });
  await page.waitForURL('**/case/');
  await page.getByRole('button', { name: 'It came back' }).click();
  await expect(page.getByRole('group', { name: 'What is back?' }).getByRole('checkbox')).toHaveCount(1);
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(page.getByRole('heading', { name: 'What could cause it' })).toBeVisible();
  await expect(page.locator('.title-block')).toContainText('1 seen');
  await page.goto(`${baseURL ?? ''}/case/decide/`);
  await page.getByRole('button', { name: /^Show \d+ more changes$/ }).click();
  await expect(page.locator('.option', { hasText: 'Fit a stronger part fan' })).toContainText('(cured it before)');
  await page.goto(`${baseURL ?? ''}/case/log/`);
  await expect(page.getByText('cured, but it came back.')).toBeVisible();
  await page.goto(`${baseURL ?? ''}/casebook/`);
  await expect(page.getByText('came back', { exact: true })).toBeVisible();
  await expect(page.getByText('No case is closed as cured yet.')).toBeVisible();
});
