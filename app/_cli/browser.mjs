// Finds a Chromium for the browser tests, or installs one.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root, run } from './setup.mjs';

const KNOWN = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/Applications/Chromium.app/Contents/MacOS/Chromium'];

export const CHROMIUM_WORDS = ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic'];

/** Path of an installed browser, or undefined when the test runner's own one is to be used. */
export function browserPath() {
  return [process.env.CHROMIUM_PATH, ...KNOWN].find((path) => path !== undefined && existsSync(path));
}

/** Makes sure that there is a browser: an installed one, the runner's own, or Debian's package. */
export async function installBrowser() {
  if (browserPath() !== undefined) return;
  const { chromium } = await import('@playwright/test');
  if (existsSync(chromium.executablePath())) return;
  console.log('Installing a browser for the tests …');
  if (run(process.execPath, [join(root, 'node_modules/@playwright/test/cli.js'), 'install', 'chromium-headless-shell']) === 0) return;
  const isRoot = process.platform === 'linux' && process.getuid?.() === 0;
  if (isRoot && run('apt-get', ['update', '-qq']) === 0 && run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { DEBIAN_FRONTEND: 'noninteractive' }) === 0) return;
  console.error('No browser could be installed. Install Chromium, or set CHROMIUM_PATH to one, then run npm test again.');
  process.exit(2);
}
