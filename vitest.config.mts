import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/workbench/**', 'test/benchmarks/**', 'node_modules/**'],
    globalSetup: ['server/tools/generate.mjs'],
    globals: false,
    pool: 'threads',
  },
});
