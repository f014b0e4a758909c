import { expect, test, type Page } from '@playwright/test';
import { SIZES, accessible, fitsWidth, watch } from './walk';

const ADVERTISEMENT = 'Radial blower 50x15 24V 0.10A 6000rpm 5.36 CFM';

for (const [name, viewport] of Object.entries(SIZES)) {
  test.describe(`the air path on a ${name}`, () => {
    test.use({ viewport, serviceWorkers: 'block' });

    test('a size is changed in the drawing by keys alone, and slips are told at its field', async ({ page, baseURL }) => {
      const faults = watch(page, baseURL ?? '');
      await openExample(page);
      const distance = page.getByRole('spinbutton', { name: 'Distance to the nozzle, outlet left' });
      const before = await page.locator('.air-option-best').innerText();
      await distance.focus();
      await page.keyboard.press('ArrowUp');
      await expect(distance).toHaveAttribute('aria-valuetext', '15.5 mm');
      await page.keyboard.press('Enter');
      const field = page.getByRole('textbox', { name: 'Distance to the nozzle, outlet left' });
      await expect(field).toBeFocused();
      await field.fill('24 kg');
      await expect(page.locator('.air-size-card')).toContainText('Look again.');
      await accessible(page, 'open field');
      await field.fill('24');
      await page.keyboard.press('Enter');
      await expect(distance).toBeFocused();
      await expect(distance).toHaveAttribute('aria-valuetext', '24 mm');
      await expect(page.locator('.air-option-best')).not.toHaveText(before);
      await page.keyboard.press('Enter');
      await field.fill('80');
      await page.keyboard.press('Escape');
      await expect(distance).toHaveAttribute('aria-valuetext', '24 mm');
      expect(faults).toEqual([]);
    });

    test('a pasted advertisement is confirmed, and held against a trusted sheet of the same size', async ({ page, baseURL }) => {
      const faults = watch(page, baseURL ?? '');
      await page.goto('/air/');
      await page.getByRole('button', { name: 'Add a fan on offer' }).click();
      const offer = page.locator('.sheet-offer');
      await offer.getByLabel('The line, as it stands there').fill(ADVERTISEMENT);
      await expect(offer.getByRole('listitem').filter({ hasText: 'Free flow' })).toContainText('“5.36 CFM”');
      await offer.getByRole('button', { name: 'Use these' }).click();
      await expect(offer.getByLabel('Free flow', { exact: true })).toHaveValue('5.36');
      await offer.getByText('Hold its claim against a trusted data sheet').click();
      for (const [label, value] of [['Trusted: free flow', '5'], ['Trusted: speed', '6500'], ['Trusted: voltage', '24'], ['Trusted: current', '0.18']] as const) await offer.getByLabel(label).fill(value);
      // By hand: 5 CFM × (0.10/0.18)^0.65 less a tenth, to 5 CFM × (0.10/0.18)^(1/3) and a tenth.
      await expect(page.locator('.claim')).toContainText('Not credible.');
      await expect(page.locator('.claim')).toContainText('3.1–4.5 CFM');
      await fitsWidth(page, 'form');
      await accessible(page, 'form');
      expect(faults).toEqual([]);
    });

    test('readings are shown before and after, and everything is there as tables', async ({ page }) => {
      await openExample(page);
      await expect(page.getByRole('heading', { name: 'What the readings changed' })).toBeVisible();
      await page.getByRole('button', { name: 'As tables, with what was assumed' }).click();
      await expect(page.getByRole('heading', { name: 'Where the pressure is lost' })).toBeVisible();
      await page.getByRole('button', { name: /^Option B: / }).click();
      await expect(page.getByRole('heading', { name: /^Before you buy/ })).toBeVisible();
      await fitsWidth(page, 'results');
      await accessible(page, 'results');
    });

    test('a slip in the form leads back to its field, and the answer stays in sight while the form is open', async ({ page }) => {
      await openExample(page);
      await page.getByRole('button', { name: 'Change in a form' }).click();
      await expect(page.locator('.air-answer')).toBeInViewport();
      await page.getByText('More about the fan', { exact: true }).click();
      await page.getByLabel('Voltage it gets').first().fill('lots');
      await page.getByRole('button', { name: 'Hide the form' }).click();
      await page.getByRole('button', { name: 'fan, voltage it gets' }).first().click();
      await expect(page.getByLabel('Voltage it gets').first()).toBeFocused();
      await accessible(page, 'slip in the form');
      await page.getByLabel('Voltage it gets').first().fill('');
      await page.locator('.air-answer').click();
      await expect(page.locator('.air-options')).toBeInViewport();
    });

    test('two unlike fans are entered, drawn, and told apart', async ({ page, baseURL }) => {
      const faults = watch(page, baseURL ?? '');
      await openExample(page);
      await page.getByRole('button', { name: 'Change in a form' }).click();
      await page.getByText('More about the fan', { exact: true }).click();
      await page.getByLabel('How many fans').first().selectOption('parallel');
      const second = page.locator('.sheet-second').first();
      await second.getByLabel('It is').selectOption('other');
      await second.getByLabel('Kind').selectOption('axial');
      await second.getByLabel('Free flow').fill('1.6');
      await second.getByLabel('Largest pressure').fill('42');
      await expect(page.locator('.air-facts')).toContainText('second fan');
      await expect(page.getByRole('img', { name: /beside it on the same duct: second fan/ })).toBeVisible();
      await fitsWidth(page, 'two fans');
      await accessible(page, 'two fans');
      expect(faults).toEqual([]);
    });

    test('a claim that cannot be believed gives way to its band, which is told, and can be taken back', async ({ page }) => {
      await openExample(page);
      const row = page.locator('.air-option', { hasText: 'New fan: 50' });
      await expect(page.getByText('The page reckons with this band')).toBeVisible();
      await expect(row).toContainText('Its claim is not believed');
      await page.getByRole('button', { name: 'As tables, with what was assumed' }).click();
      await expect(page.locator('.air-tables')).toContainText('the band of the claim check');
      await accessible(page, 'band in use');
      const before = await row.innerText();
      await page.getByRole('button', { name: 'Reckon with the claim all the same' }).click();
      await expect(page.getByRole('button', { name: 'Reckon with this band' })).toBeVisible();
      await expect(page.locator('.air-tables')).not.toContainText('the band of the claim check');
      await expect(row).not.toHaveText(before, { useInnerText: true });
    });
  });
}

async function openExample(page: Page): Promise<void> {
  await page.goto('/air/');
  await page.getByRole('button', { name: 'Show the example' }).click();
  await expect(page.locator('.air-option').first()).toBeVisible();
}
