/** The text of the worker that keeps a copy of the whole site on the device; see offline-worker.mjs. */
export declare const offlineWorker: (version: string, paths: readonly string[]) => string;
