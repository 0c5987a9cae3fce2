/**
 * Days rehearsed on tanks that live on the shell, with random faults and stubborn steels: no advice names a pressure over
 * the planned stretch pressure, none is quiet when its readings are too old, every stop has its reason and its reading in
 * the record. DAYS=n (default 500), SEED=n for others.
 */
import { judgedDays } from '../station/rig/judged/days.ts';

const days = Number(process.env['DAYS'] ?? 500);
const seed = Number(process.env['SEED'] ?? 90_000);
const found = judgedDays(days, seed);
const say = (text: string): void => void process.stdout.write(`${text}\n`);
say(
  `${days} days: ${found.advices} pieces of advice, ${found.forecasts} forecasts, ${found.stops} stops; ` +
    `ends: ${[...found.ends].map(([end, count]) => `${count} ${end}`).join(', ')}`,
);
say(`advice over the planned stretch pressure: ${found.over}`);
say(`quiet with stale readings: ${found.quietWhileStale} of ${found.staleLooks} looks`);
say(`stops without reason or reading: ${found.bareStops}`);
process.exitCode = found.over + found.quietWhileStale + found.bareStops > 0 ? 1 : 0;
