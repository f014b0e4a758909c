import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';
import { IMPURE, ROOMS } from './import-directions';

const root = join(import.meta.dirname, '../..');

interface Import {
  readonly file: string;
  readonly from: string;
  readonly typeOnly: boolean;
}

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name)).filter((name) => /\.tsx?$/.test(name));
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(root, file), 'utf8');
  const found = [...text.matchAll(/(?:import|export)\s+(type\s+)?([^;'"]*?)from\s+'([^']+)'/g)];
  return found.map((match) => {
    const names = match[2] ?? '';
    const allTypes = /^\s*\{/.test(names) && names.replace(/[{}]/g, '').split(',').filter((name) => name.trim() !== '').every((name) => /^\s*type\s/.test(name));
    return { file, from: resolved(file, match[3] ?? ''), typeOnly: match[1] !== undefined || allTypes };
  });
}

/** Paths inside the project as `lib/units/index`; packages as they are. */
function resolved(file: string, from: string): string {
  if (from.startsWith('@/')) return from.slice(2);
  return from.startsWith('.') ? normalize(join(dirname(file), from)) : from;
}

const roomOf = (path: string): string | undefined => ROOMS.map((room) => room.folder).find((folder) => path === folder || path.startsWith(`${folder}/`));

describe('who imports whom', () => {
  const files = [...sources('lib'), ...sources('app'), ...sources('content')];
  const all = files.flatMap(importsOf);

  it('is read from a real tree', () => {
    expect(files.length).toBeGreaterThan(100);
    expect(all.length).toBeGreaterThan(200);
  });

  it('lets every room of lib reach only the rooms it may', () => {
    const wrong = all.flatMap(({ file, from, typeOnly }) => {
      const room = ROOMS.find((each) => roomOf(file) === each.folder);
      const target = roomOf(from);
      if (!room || target === room.folder) return [];
      if (target !== undefined) return room.may.includes(target) || (typeOnly && room.types?.includes(target)) ? [] : [`${file} imports ${from}; allowed: ${[...room.may, ...(room.types ?? []).map((type) => `types of ${type}`)].join(', ') || 'nothing of ours'}`];
      if (from.startsWith('app') || from.startsWith('tests')) return [`${file} imports ${from}; lib and content know no app and no tests`];
      return room.packages?.includes(from) ? [] : [`${file} imports the package ${from}; allowed: ${room.packages?.join(', ') ?? 'none'}`];
    });
    expect(wrong).toEqual([]);
  });

  it('lets other rooms and the app reach a room only through its index', () => {
    const wrong = all.filter(({ file, from }) => {
      const target = roomOf(from);
      return target?.startsWith('lib/') && roomOf(file) !== target && from !== target && from !== `${target}/index`;
    });
    expect(wrong.map(({ file, from }) => `${file} reaches into ${from}`)).toEqual([]);
  });

  it('lets nothing of the product import tests', () => {
    expect(all.filter(({ from }) => from.startsWith('tests')).map(({ file, from }) => `${file} imports ${from}`)).toEqual([]);
  });

  it('has no circle of files', () => {
    const graph = new Map(files.map((file) => [file.replace(/\.tsx?$/, ''), importsOf(file).filter((each) => !each.typeOnly).map((each) => each.from)]));
    const aliases = (path: string): string => (graph.has(path) ? path : graph.has(`${path}/index`) ? `${path}/index` : path);
    const done = new Set<string>();
    const circles: string[] = [];
    const visit = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) { circles.push([...trail.slice(trail.indexOf(path)), path].join(' → ')); return; }
      if (done.has(path)) return;
      for (const next of graph.get(path) ?? []) if (graph.has(aliases(next))) visit(aliases(next), [...trail, path]);
      done.add(path);
    };
    for (const path of graph.keys()) visit(path, []);
    expect(circles).toEqual([]);
  });

  it('keeps lib pure', () => {
    const wrong = sources('lib').flatMap((file) => IMPURE.filter(({ pattern }) => pattern.test(readFileSync(join(root, file), 'utf8'))).map(({ why }) => `${file}: ${why}`));
    expect(wrong).toEqual([]);
  });
});
