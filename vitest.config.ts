import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const native = new URL('./setup/native.mjs', import.meta.url).href;

// oxlint-disable-next-line import/no-default-export -- the runner wants a default export
export default defineConfig({
  test: {
    include: ['**/*.test.ts', '**/*.test.tsx'],
    exclude: ['**/node_modules/**', 'dist/**', 'out/**'],
    testTimeout: 60_000,
    pool: 'forks',
    // Left to itself the runner leaves one of two cores idle.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    // Sources are loaded by Node itself, so that numeric code runs at its own speed (see setup/typescript.mjs).
    // Mocking of modules is given up for it; clock, dice, files and network come in as arguments anyway.
    execArgv: ['--import', native, '--enable-source-maps'],
    experimental: { viteModuleRunner: false, nodeLoader: false },
  },
});
