import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const TOP = new Set(['app', 'content', 'lib', 'tests', 'public', '.ci', 'package.json', 'package-lock.json', 'next.config.mjs', 'tsconfig.json', 'README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'LICENSE', '.gitignore']);

/** Files that git knows or would take up; a checkout without git gives none and fails loudly below. */
const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], { cwd: root, encoding: 'utf8', maxBuffer: 1e8 }).split('\n').filter((file) => file !== '');

describe('the tree', () => {
  it('has only the top level that a newcomer expects', () => {
    expect(files.length).toBeGreaterThan(200);
    expect([...new Set(files.map((file) => file.split('/')[0]))].filter((name) => !TOP.has(name ?? ''))).toEqual([]);
  });

  it('names files in kebab-case, without drawers for odds and ends', () => {
    const code = files.filter((file) => /^(lib|app|content)\/.*\.(tsx?|mjs|mdx)$/.test(file));
    const name = (file: string): string => (file.split('/').pop() ?? '').replace(/(\.d)?\.[a-z]+$/, '');
    expect(code.filter((file) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(name(file)))).toEqual([]);
    expect(code.filter((file) => /^(utils?|helpers?|common|misc)$/.test(name(file)))).toEqual([]);
  });

  it('holds no style attribute in anything that is rendered, which the content policy would block', () => {
    const wrong = files.filter((file) => /^app\/.*\.tsx$/.test(file) && /\sstyle=\{/.test(readFileSync(join(root, file), 'utf8')));
    expect(wrong).toEqual([]);
  });
});
