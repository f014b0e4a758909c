import { defineConfig } from '@playwright/test';
import { CHROMIUM_WORDS, browserPath } from '../app/_cli/browser.mjs';

const executablePath = browserPath();

export default defineConfig({
  testDir: './site',
  testMatch: '**/*.spec.ts',
  outputDir: '../test-results',
  timeout: 60_000,
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  reporter: [['list'], ['json', { outputFile: process.env.LEEWARD_SITE_REPORT ?? '../node_modules/.cache/leeward-reports/site.json' }]],
  use: {
    baseURL: 'http://127.0.0.1:4391',
    launchOptions: { args: [...CHROMIUM_WORDS], ...(executablePath === undefined ? {} : { executablePath }) },
  },
  webServer: { command: 'node app/_cli/serve-for-tests.mjs', cwd: `${import.meta.dirname}/..`, url: 'http://127.0.0.1:4391/', reuseExistingServer: false },
});
