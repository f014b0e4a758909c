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

    // What follows hangs on no width: once is enough.
    if (name !== 'phone') return;

    test('a usual and a largest current of an advertisement go where each belongs', async ({ page, baseURL }) => {
      const faults = watch(page, baseURL ?? '');
      await page.goto('/air/');
      await page.getByRole('button', { name: 'Add a fan on offer' }).click();
      const offer = page.locator('.sheet-offer');
      await offer.getByLabel('The line, as it stands there').fill('Blower 50x15, 24 V (4.5–26.4 V), rated 0.10 A, max. 0.16 A, 6,000 rpm ±10 %, 5.36 CFM max');
      await expect(offer.getByRole('listitem').filter({ hasText: 'Largest current' })).toContainText('current while starting');
      await expect(offer.getByText('Read, but not needed here: 4.5-26.4 V.')).toBeVisible();
      await expect(offer.getByRole('alert')).toHaveCount(0);
      await fitsWidth(page, 'what was read');
      await accessible(page, 'what was read');
      await offer.getByRole('button', { name: 'Use these' }).click();
      await expect(offer.getByLabel('Current on its label')).toHaveValue('0.1');
      await expect(offer.getByLabel('Speed', { exact: true })).toHaveValue('6000 ± 600');
      await offer.getByText('More about this fan').click();
      await expect(offer.getByLabel('Current while starting')).toHaveValue('0.16');
      expect(faults).toEqual([]);
    });

    test('the table of a fan is opened from a file or dropped; a file that is none leaves the box as it is', async ({ page, baseURL }) => {
      const faults = watch(page, baseURL ?? '');
      await page.goto('/air/');
      await page.getByText('More about the fan', { exact: true }).click();
      const box = page.getByLabel('Table of its curve: flow and pressure, first line with the units');
      const file = page.getByLabel('Open a file with the table');
      await box.fill('my notes');
      for (const [name, buffer, says] of [
        ['curve.xlsx', Buffer.from([0x50, 0x4b, 3, 4, 20, 0]), 'spreadsheet'], ['empty.csv', Buffer.from(''), 'Nothing stands in this file'], ['huge.csv', Buffer.alloc(3_000_000, 32), '3 MB'], ['noise.txt', Buffer.from([1, 0, 2, 0]), 'other than text'],
      ] as const) {
        await file.setInputFiles({ name, mimeType: 'text/csv', buffer });
        await expect(page.getByRole('alert').filter({ hasText: name })).toContainText(says);
        await expect(box).toHaveValue('my notes');
      }
      await accessible(page, 'a file that is none');
      // ³ as one byte, as Western spreadsheets write it.
      await file.setInputFiles({ name: 'curve.csv', mimeType: 'text/csv', buffer: Buffer.from('flow (m³/h);pressure (Pa)\r\n0;120\r\n2,1;80\r\n4,8;0\r\n', 'latin1') });
      await expect(page.getByText('From curve.csv.')).toBeVisible();
      await expect(page.getByRole('alert').filter({ hasText: 'curve.csv' })).toContainText('Windows-1252');
      await expect(page.locator('.paste-points tbody tr')).toHaveCount(3);
      await fitsWidth(page, 'a table from a file');
      await page.getByRole('button', { name: 'Put back what stood in the box' }).click();
      await expect(box).toHaveValue('my notes');
      const dropped = await page.evaluateHandle(() => {
        const data = new DataTransfer();
        data.items.add(new File(['flow (CFM),pressure (mmH2O)\n0,12.5\n2.1,9.8\n4.8,0\n'], 'dropped.csv', { type: 'text/csv' }));
        return data;
      });
      await box.dispatchEvent('drop', { dataTransfer: dropped });
      await expect(page.getByText('From dropped.csv.')).toBeVisible();
      await page.getByRole('button', { name: 'Use this curve' }).click();
      await expect(page.getByText('A curve from a table is in use.')).toBeVisible();
      expect(faults).toEqual([]);
    });

    test('two fans with ducts of their own: losses and slopes are told of both', async ({ page }) => {
      await openExample(page);
      await page.getByRole('button', { name: 'Change in a form' }).click();
      await page.getByText('More about the fan', { exact: true }).click();
      await page.getByLabel('How many fans').first().selectOption('own-ducts');
      await expect(page.locator('.air-facts')).toContainText(/The pressure is lost at: .*duct of fan [12]/);
      await page.getByRole('button', { name: 'As tables, with what was assumed' }).click();
      const losses = page.getByRole('table').filter({ hasText: 'air leaving, left' });
      await expect(losses.getByText('air leaving, left, duct of fan 1')).toBeVisible();
      await expect(losses.getByText('air leaving, right, duct of fan 2')).toBeVisible();
      await expect(page.getByRole('cell', { name: 'fan speed, fan 1' })).toBeVisible();
      await fitsWidth(page, 'two ducts as tables');
      await accessible(page, 'two ducts as tables');
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
