// npm test: installs what it needs, then types, lint, content, unit tests, build, browser tests. One last line counts.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildSite, checkNode, installPackages, root } from './setup.mjs';

checkNode();
installPackages();
const { installBrowser } = await import('./browser.mjs');
await installBrowser();

const reports = join(root, 'node_modules/.cache/leeward-reports');
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });
const bin = (path) => join(root, 'node_modules', path);
const counts = { passed: 0, failed: 0 };
const BESIDE = {
  types: [bin('typescript/bin/tsc'), '--noEmit'],
  lint: [bin('eslint/bin/eslint.js'), '--config', 'tests/eslint.config.mjs', 'app', 'content', 'lib', 'tests'],
};

step('types of pages', [bin('next/dist/bin/next'), 'typegen']);
// Types and lint keep a core busy for long; what follows does not wait for them.
const beside = ['types', 'lint'].map((name) => ({ name, done: begin(BESIDE[name]) }));
step('content', [bin('tsx/dist/cli.mjs'), 'app/_cli/check-content.ts']);
suite('unit tests', [bin('vitest/vitest.mjs'), 'run', '--config', 'tests/vitest.config.ts', '--reporter=default', '--reporter=json', `--outputFile.json=${join(reports, 'unit.json')}`], join(reports, 'unit.json'), (report) => ({ passed: report.numPassedTests, failed: report.numFailedTests + report.numFailedTestSuites * (report.numFailedTests === 0 ? 1 : 0) }));
for (const { name, done } of beside) {
  const { status, output } = await done;
  console.log(`\n== ${name}\n${output}`);
  counts[status === 0 ? 'passed' : 'failed'] += 1;
}
console.log('\n== build');
buildSite();
suite('browser tests', [bin('@playwright/test/cli.js'), 'test', '--config', 'tests/playwright.config.ts'], join(reports, 'site.json'), (report) => ({ passed: report.stats.expected, failed: report.stats.unexpected + report.stats.flaky }), { LEEWARD_SITE_REPORT: join(reports, 'site.json') });

console.log(`${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = counts.failed === 0 ? 0 : 1;

function step(name, words) {
  const done = node(name, words);
  counts[done === 0 ? 'passed' : 'failed'] += 1;
}

/** Runs beside what follows; resolves with its status and all that it printed. */
function begin(words) {
  const child = spawn(process.execPath, words, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (piece) => (output += piece));
  return new Promise((resolve) => {
    child.on('error', (reason) => resolve({ status: 1, output: String(reason) }));
    child.on('close', (status) => resolve({ status: status ?? 1, output }));
  });
}

function suite(name, words, report, read, environment = {}) {
  const done = node(name, words, environment);
  if (!existsSync(report)) {
    counts.failed += 1;
    return;
  }
  const found = read(JSON.parse(readFileSync(report, 'utf8')));
  counts.passed += found.passed;
  counts.failed += found.failed;
  if (done !== 0 && found.failed === 0) counts.failed += 1;
}

function node(name, words, environment = {}) {
  console.log(`\n== ${name}`);
  return spawnSync(process.execPath, words, { cwd: root, stdio: 'inherit', env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...environment } }).status ?? 1;
}
