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
  });
}

async function openExample(page: Page): Promise<void> {
  await page.goto('/air/');
  await page.getByRole('button', { name: 'Show the example' }).click();
  await expect(page.locator('.air-option').first()).toBeVisible();
}
