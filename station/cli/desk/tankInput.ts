/** A tank file from disk or standard input, or the end of the command with every issue it has. */
import { issueLine } from '@hoopwright/wire/issue';
import { type ParsedTank, parseTankFile } from '@hoopwright/wire/tank';
import { BAD_INPUT, type Desk, Ending, readOrEnd } from './desk.ts';

export type GoodTank = Extract<ParsedTank, { ok: true }>;

export async function tankFrom(desk: Desk, path: string, asGiven: boolean): Promise<GoodTank> {
  const parsed = parseTankFile(await readOrEnd(desk, path), { asGiven });
  if (parsed.ok) return parsed;
  throw new Ending(
    BAD_INPUT,
    `${path === '-' ? 'standard input' : path} is not a tank file that can be used:\n${parsed.issues.map(issueLine).join('\n')}`,
  );
}
