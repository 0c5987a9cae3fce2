/**
 * Faults on invented tanks that live on the shell: each is called within a tenth of the planned growth after it can first
 * be seen in one reading, sound tanks are left alone, the true explanation is among the first two.
 * TANKS=n of each fault (default 200), SOUND=n sound ones (default 300), SEED=n for others.
 */
import { DAY_RUNS, runsFor } from '../core/stretch/quick/quick.ts';
import { FAULTS, type FaultTrial, faultTrial } from '../checks/knowing/faults.ts';
import { PLANNED } from '../checks/knowing/trial.ts';
import { quickOf } from '../checks/knowing/world.ts';

const tanks = Number(process.env['TANKS'] ?? 200);
const sound = Number(process.env['SOUND'] ?? 300);
const seed = Number(process.env['SEED'] ?? 80_000);
const RUNS = runsFor(DAY_RUNS);
const SOON = 0.1 * PLANNED;

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const quick = quickOf(RUNS, seed - 1000);
let failed = false;

const trialsOf = (fault: (typeof FAULTS)[number], count: number): FaultTrial[] =>
  Array.from({ length: count }, (_, k) => faultTrial({ seed: seed + k, fault, quick }));

for (const fault of FAULTS) {
  const trials = trialsOf(fault, fault === 'none' ? sound : tanks);
  const called = trials.filter((trial) => trial.called !== undefined);
  if (fault === 'none') {
    const share = called.length / trials.length;
    failed ||= share > 0.02;
    say(`sound: ${called.length} of ${trials.length} called (${percent(share)}, at most 2 %)`);
    continue;
  }
  const seen = trials.filter((trial) => trial.observable !== undefined || trial.called !== undefined);
  const soon = seen.filter(
    ({ called: at, observable }) => at !== undefined && at - (observable ?? at) <= SOON,
  );
  const right = called.filter(({ explained, truth }) =>
    explained?.ranked.slice(0, 2).some(({ explanation }) => explanation === truth),
  );
  const first = called.filter(({ explained, truth }) => explained?.ranked[0]?.explanation === truth);
  failed ||= soon.length < 0.95 * seen.length || right.length < 0.8 * called.length;
  say(
    `${fault}: could be seen in ${seen.length} of ${trials.length}; called within a tenth of the growth in ` +
      `${percent(soon.length / seen.length)} (95 %); truth first in ${percent(first.length / called.length)}, ` +
      `among the first two in ${percent(right.length / called.length)} (80 %)`,
  );
}
process.exitCode = failed ? 1 : 0;
