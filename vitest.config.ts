import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Tests that take long, most of it waiting: begun first, so that the last to end are short. */
const LONG = [/web\/browser\/day\//, /web\/browser\//, /station\/kill\//, /checks\/shell\//];

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const found = LONG.findIndex((long) => long.test(moduleId));
      return found < 0 ? LONG.length : found;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

const native = new URL('./setup/native.mjs', import.meta.url).href;

// oxlint-disable-next-line import/no-default-export -- the runner wants a default export
export default defineConfig({
  test: {
    include: ['**/*.test.ts', '**/*.test.tsx'],
    exclude: ['**/node_modules/**', 'dist/**', 'out/**'],
    testTimeout: 60_000,
    pool: 'forks',
    // Left to itself the runner leaves one of two cores idle; more than cores, and what is timed comes late.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    sequence: { sequencer: LongFirst },
    // Sources are loaded by Node itself, so that numeric code runs at its own speed (see setup/typescript.mjs).
    // Mocking of modules is given up for it; clock, dice, files and network come in as arguments anyway.
    execArgv: ['--import', native, '--enable-source-maps'],
    experimental: { viteModuleRunner: false, nodeLoader: false },
  },
});
