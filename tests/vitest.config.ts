import { defineConfig } from 'vitest/config';

const root = `${import.meta.dirname}/..`;

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/site/**', 'node_modules/**'],
    testTimeout: 30_000,
    pool: 'threads',
    // One less than the cores is usual, which on two cores is one.
    maxWorkers: 2,
    // The files share modules. What these keep are caches that change no result; loading them anew for each file doubled the time.
    isolate: false,
  },
});
