import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { offlineWorker } from '../../app/_cli/offline-worker.mjs';

const SITE = 'https://shed.test';
const PATHS = ['/', '/_next/static/a-1.js', '/_next/static/b-2.js', '/air/', '/bench/', '/case/', '/handbook/', '/icon.svg'];

/** A device that keeps copies by name, as a browser does, and a network that may fail. */
class Device {
  readonly copies = new Map<string, Map<string, { readonly ok: boolean; readonly of: string }>>();
  asked: string[] = [];
  atOnce = 0;
  most = 0;

  /** Runs the worker's installation; `refuses` says which requests get no answer. */
  async install(text: string, refuses: (path: string) => boolean = () => false): Promise<void> {
    let waitedFor: Promise<unknown> = Promise.resolve();
    const within = {
      caches: {
        open: (name: string) => Promise.resolve(this.open(name)),
        match: (path: string) => Promise.resolve([...this.copies.values()].flatMap((copy) => copy.get(path) ?? [])[0]),
      },
      fetch: async ({ path }: { readonly path: string }) => {
        this.asked.push(path);
        this.atOnce += 1;
        this.most = Math.max(this.most, this.atOnce);
        await new Promise((resolve) => setTimeout(resolve, 1));
        this.atOnce -= 1;
        if (refuses(path)) throw new TypeError('the network failed');
        return { ok: true, of: path };
      },
      Request: class { constructor(readonly path: string) {} },
      URL, Promise, Error, Set, Array,
      self: { addEventListener: (kind: string, listener: (event: unknown) => void) => { if (kind === 'install') listener({ waitUntil: (work: Promise<unknown>) => { waitedFor = work; } }); } },
    };
    runInNewContext(text, within);
    await waitedFor;
  }

  private open(name: string): object {
    const copy = this.copies.get(name) ?? new Map<string, { readonly ok: boolean; readonly of: string }>();
    this.copies.set(name, copy);
    return {
      keys: () => Promise.resolve([...copy.keys()].map((path) => ({ url: SITE + path }))),
      put: (path: string, response: { readonly ok: boolean; readonly of: string }) => Promise.resolve(copy.set(path, response)),
    };
  }
}

describe('the worker that keeps a copy of the site', () => {
  it('keeps every file, a few at a time', async () => {
    const device = new Device();
    await device.install(offlineWorker('one', PATHS));
    expect([...(device.copies.get('leeward-one')?.keys() ?? [])].sort()).toEqual([...PATHS].sort());
    expect(device.most).toBeGreaterThan(1);
    expect(device.most).toBeLessThanOrEqual(3);
  });

  it('goes on where a failing network stopped it', async () => {
    const device = new Device();
    await expect(device.install(offlineWorker('one', PATHS), (path) => path === '/bench/')).rejects.toThrow('the network failed');
    const arrived = [...(device.copies.get('leeward-one')?.keys() ?? [])];
    expect(arrived.length).toBeGreaterThan(0);
    await new Promise((resolve) => setTimeout(resolve, 20));
    const kept = [...(device.copies.get('leeward-one')?.keys() ?? [])];
    device.asked = [];
    await device.install(offlineWorker('one', PATHS));
    expect(device.asked.sort()).toEqual(PATHS.filter((path) => !kept.includes(path)).sort());
    expect([...(device.copies.get('leeward-one')?.keys() ?? [])].sort()).toEqual([...PATHS].sort());
  });

  it('takes files whose name carries their digest from an older copy, and every page anew', async () => {
    const device = new Device();
    await device.install(offlineWorker('one', PATHS));
    device.asked = [];
    await device.install(offlineWorker('two', [...PATHS, '/_next/static/c-3.js']));
    expect(device.asked.sort()).toEqual([...PATHS.filter((path) => !path.startsWith('/_next/static/')), '/_next/static/c-3.js'].sort());
    expect(device.copies.get('leeward-two')?.size).toBe(PATHS.length + 1);
  });
});
