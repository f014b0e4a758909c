// Makes a fresh machine ready: checks Node, installs packages when the lock file changed, builds when something changed.
// Plain Node without packages, because it runs before there are any.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export const root = join(import.meta.dirname, '../..');
const stamp = join(root, 'node_modules/.leeward-installed');
const built = join(root, 'out/.leeward-built');

/** Stops with a clear message when Node is too old. */
export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 9)) return;
  console.error(`Leeward needs Node 20.9 or newer; this is ${process.versions.node}.\nInstall a newer Node, then run the same command again.`);
  process.exit(2);
}

/** Installs the packages of the lock file unless exactly these are installed. */
export function installPackages() {
  const wanted = hashOf([join(root, 'package-lock.json')]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing packages …');
  const npm = process.env.npm_execpath;
  const done = npm
    ? run(process.execPath, [npm, 'ci', '--no-audit', '--no-fund', '--prefer-offline'])
    : run(process.platform === 'win32' ? 'npm.cmd' : 'npm', ['ci', '--no-audit', '--no-fund', '--prefer-offline']);
  if (done !== 0) {
    console.error('The packages could not be installed. Check the network or the registry, then run the same command again.');
    process.exit(2);
  }
  writeFileSync(stamp, wanted);
}

/** Builds the site into out/ unless it is newer than everything it is made from. */
export function buildSite() {
  const wanted = hashOf(sourceFiles());
  if (existsSync(built) && readFileSync(built, 'utf8') === wanted) return;
  console.log('Building the site …');
  const done = run(process.execPath, [join(root, 'app/_cli/build.mjs')]);
  if (done !== 0) process.exit(done);
  mkdirSync(join(root, 'out'), { recursive: true });
  writeFileSync(built, wanted);
}

/** Runs a command in the project with its output shown; gives its exit code. */
export function run(command, words, environment = {}) {
  const done = spawnSync(command, words, { cwd: root, stdio: 'inherit', env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...environment } });
  return done.status ?? 1;
}

function sourceFiles() {
  const files = ['package-lock.json', 'next.config.mjs', 'tsconfig.json'].map((name) => join(root, name));
  for (const folder of ['app', 'content', 'lib', 'public']) {
    for (const name of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      const path = join(root, folder, name);
      if (statSync(path).isFile()) files.push(path);
    }
  }
  return files.sort();
}

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(file).update(readFileSync(file));
  return hash.digest('hex');
}
