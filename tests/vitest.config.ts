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
    // The files share modules, which hold nothing but what they have read: half the time goes into loading them anew.
    isolate: false,
  },
});
