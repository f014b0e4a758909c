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
  },
});
