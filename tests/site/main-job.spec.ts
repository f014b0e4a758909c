import { expect, test } from '@playwright/test';
import { SIZES, accessible, fitsWidth, matchRow, watch } from './walk';

/** The demo scenario: a tool library, machine no. 3, vent hinges for a seed-raising greenhouse in PLA. */
for (const [name, viewport] of Object.entries(SIZES)) {
  test(`a failed hinge goes from words to a recorded proof, typed and clicked, on a ${name}`, async ({ browser, baseURL }) => {
    test.setTimeout(150_000);
    const origin = baseURL ?? '';
    const context = await browser.newContext({ viewport, serviceWorkers: 'block' });
    const page = await context.newPage();
    const faults = watch(page, origin);
    const look = async (what: string): Promise<void> => { await fitsWidth(page, `${what}, ${name}`); await accessible(page, `${what}, ${name}`, name === 'phone' ? 'all' : 'of layout'); };

    const go = async (place: string): Promise<void> => {
      if (name === 'phone') await page.getByRole('button', { name: 'Menu' }).click();
      await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place }).click();
    };

    // Start: own words, three things seen, one not.
    await page.goto('/');
    await page.getByRole('textbox', { name: 'What went wrong?' }).fill('edges lift up on the left and then everything moved over');
    await matchRow(page, 'Edges of steep undersides curl up').getByRole('button', { name: 'Seen', exact: true }).first().click();
    await page.getByRole('group', { name: 'Curl or sag is worse on one side of the part' }).getByRole('button', { name: 'Seen', exact: true }).click();
    await matchRow(page, 'Upper layers sit further over').getByRole('button', { name: 'Seen', exact: true }).first().click();
    await page.getByRole('textbox', { name: 'What went wrong?' }).fill('edges lift up, corners lift off the plate');
    await matchRow(page, 'Corners lift off the plate').getByRole('button', { name: 'Not seen', exact: true }).first().click();
    await look('start');
    await page.getByRole('button', { name: 'Open the case' }).click();

    // The case: facts of machine and print, a tree of causes, one next thing to do.
    await page.waitForURL('**/case/');
    await expect(page.getByRole('heading', { name: 'Do this next' })).toBeVisible();
    // The last search only led to something that is not there.
    await expect(page.getByText('In your words: “edges lift up on the left and then everything moved over”')).toBeVisible();
    await page.getByText('More facts').click();
    await page.getByLabel('Machine', { exact: true }).fill('no. 3');
    await page.getByLabel('Print', { exact: true }).fill('vent hinge, greenhouse');
    await page.getByLabel('Plastic').selectOption('PLA');
    await page.getByLabel('How it moves').selectOption('moving-bed');
    await page.getByLabel('Supply').selectOption('24 V');
    await page.getByLabel('Feed path').selectOption('short');
    const cause = page.locator('.cause-row').first();
    await cause.click();
    await expect(page.getByText('What would change this').or(page.getByText('Handbook:')).first()).toBeVisible();
    await look('case');
    await page.reload();
    await expect(page.getByText('vent hinge, greenhouse').first()).toBeVisible();

    // A measurement: the bag, with a slip of the pen on the way.
    await go('Bench');
    await page.getByRole('link', { name: 'Time how long the part fan takes to fill a bag' }).click();
    await page.waitForURL('**/bench/bag-fill/');
    const readings = page.locator('.reading-fields');
    await readings.getByRole('textbox', { name: 'Bag volume', exact: true }).fill('600 L');
    await expect(page.getByText('Look again.').first()).toBeVisible();
    await readings.getByRole('textbox', { name: 'Bag volume', exact: true }).fill('6,0');
    for (const [index, seconds] of ['15,2', '14.8', '15.6'].entries()) await readings.getByRole('textbox', { name: new RegExp(`reading ${index + 1}$`) }).fill(seconds);
    await page.getByLabel(/Rated value/).fill('60 L/min');
    await expect(page.locator('.live-value')).toContainText('0.395');
    await look('bench');
    await page.getByRole('button', { name: 'Use this result' }).click();
    await page.waitForURL('**/case/');
    await expect(page.getByText(/measured/).first()).toBeVisible();

    // Decide on the air path, from what the bench gave. The example is to look at only: nothing of it goes into a case.
    await page.getByRole('link', { name: 'Choose a change', exact: true }).last().click();
    await page.waitForURL('**/case/decide/');
    await look('decide');
    await page.getByRole('link', { name: 'Open the air path' }).click();
    await page.waitForURL('**/air/');
    await page.getByRole('button', { name: 'Show the example' }).click();
    await expect(page.locator('.air-option').first()).toBeVisible();
    await look('example of an air path');
    await expect(page.getByRole('button', { name: /^Choose: / })).toHaveCount(0);
    await page.getByRole('button', { name: 'Back to my own' }).click();
    for (const [label, value] of [['Free flow', '0.72'], ['Largest pressure', '118'], ['Current on its label', '0.06']] as const) await page.getByLabel(label, { exact: true }).first().fill(value);
    for (const [side, length] of [[0, '58'], [1, '24']] as const) await page.getByLabel('Branch: length', { exact: true }).nth(side).fill(length);
    await page.getByRole('button', { name: 'Hide the form' }).click();
    await expect(page.locator('.air-option').first()).toBeVisible();
    await look('air path');
    await page.locator('.air-option', { hasText: /new duct|even|duct/i }).first().getByRole('button').click();
    await page.getByRole('button', { name: /^Choose: / }).click();

    // Fit: fix the rule first, then tick every step.
    await page.waitForURL('**/case/fit/');
    await expect(page.getByLabel('Good when it is')).toBeVisible();
    const what = page.getByLabel('What is read');
    if (await what.count() > 0) await what.selectOption('length');
    await page.getByLabel('Good when it is').selectOption('at-most');
    await page.getByLabel('Limit of the reading (if there is one)').fill('0.3 mm');
    await page.getByLabel('Read at').selectOption('four');
    await page.getByLabel('Each reading: give or take').fill('0.08 mm');
    for (const [place, value] of [['back', '0.42'], ['right', '0.18'], ['front', '0.55'], ['left', '1.42']] as const) await page.getByLabel(`Before, ${place}`).fill(`${value} mm`);
    await page.getByRole('button', { name: 'Fix this as the rule' }).click();
    for (const box of await page.locator('.fitting-done input').all()) await box.check();
    await look('fit');
    await page.getByRole('button', { name: 'It is fitted: go on to the proof' }).click();

    // Prove: readings after, a look at each symptom, the verdict by the rule.
    await page.waitForURL('**/case/prove/');
    for (const [place, value] of [['back', '0.20'], ['right', '0.15'], ['front', '0.19'], ['left', '0.42']] as const) await page.getByLabel(`After, ${place}`).fill(`${value} mm`);
    await expect(page.getByRole('heading', { name: 'Better, with something left' })).toBeVisible();
    await page.getByRole('group', { name: 'Upper layers sit further over' }).getByRole('button', { name: 'Gone' }).click();
    await page.getByRole('group', { name: 'Edges of steep undersides curl up' }).getByRole('button', { name: 'Still there' }).click();
    await look('prove');
    await page.getByRole('button', { name: 'Start round 2' }).click();

    // Round two carries on; the log keeps everything; the casebook lists it.
    await page.waitForURL('**/case/');
    await expect(page.getByText('round 2').first()).toBeVisible();
    await page.getByRole('link', { name: 'Log and report' }).click();
    await page.waitForURL('**/case/log/');
    await expect(page.getByText('better, with something left').first()).toBeVisible();
    await look('log');
    await go('Casebook');
    await expect(page.getByText('vent hinge, greenhouse').first()).toBeVisible();
    await look('casebook');

    expect(faults).toEqual([]);
    await context.close();
  });
}
