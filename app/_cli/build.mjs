// Builds the site: case schema, Next export, then the finishing touches (content policy, offline worker).
import { join } from 'node:path';
import { checkNode, installPackages, root, run } from './setup.mjs';

checkNode();
installPackages();
const tsx = join(root, 'node_modules/tsx/dist/cli.mjs');
const next = join(root, 'node_modules/next/dist/bin/next');
for (const words of [[tsx, 'app/_cli/write-schema.ts'], [next, 'build'], [join(root, 'app/_cli/finish-export.mjs')]]) {
  const done = run(process.execPath, words);
  if (done !== 0) process.exit(done);
}
