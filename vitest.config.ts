import { defineConfig } from 'vitest/config';

// eslint-disable-next-line import/no-default-export -- the runner wants a default export
export default defineConfig({
  test: {
    include: ['**/*.test.ts', '**/*.test.tsx'],
    exclude: ['**/node_modules/**', 'dist/**', 'out/**'],
    testTimeout: 60_000,
    pool: 'forks',
  },
});
