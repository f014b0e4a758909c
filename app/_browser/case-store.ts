'use client';
import { openDB, type IDBPDatabase } from 'idb';
import type { CaseFile } from '@/lib/cases';

/** Where the cases live on this device. `kept` is false when the browser forbids storage: then they last as long as the page. */
export interface CaseStore {
  readonly kept: boolean;
  all: () => Promise<CaseFile[]>;
  one: (id: string) => Promise<CaseFile | undefined>;
  put: (file: CaseFile) => Promise<void>;
  remove: (id: string) => Promise<void>;
}

let opened: Promise<CaseStore> | undefined;

/** The store of this device, opened once. */
export function caseStore(): Promise<CaseStore> {
  opened ??= openDatabase().then(inDatabase, inMemory);
  return opened;
}

function openDatabase(): Promise<IDBPDatabase> {
  return openDB('leeward', 1, {
    upgrade(database) {
      database.createObjectStore('cases', { keyPath: 'id' });
    },
  });
}

function inDatabase(database: IDBPDatabase): CaseStore {
  return {
    kept: true,
    all: async () => (await database.getAll('cases')) as CaseFile[],
    one: async (id) => (await database.get('cases', id)) as CaseFile | undefined,
    put: async (file) => {
      await database.put('cases', file);
    },
    remove: async (id) => {
      await database.delete('cases', id);
    },
  };
}

function inMemory(): CaseStore {
  const cases = new Map<string, CaseFile>();
  return {
    kept: false,
    all: () => Promise.resolve([...cases.values()]),
    one: (id) => Promise.resolve(cases.get(id)),
    put: (file) => Promise.resolve(void cases.set(file.id, file)),
    remove: (id) => Promise.resolve(void cases.delete(id)),
  };
}
