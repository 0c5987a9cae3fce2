/** `hoopwright record verify|show|export`: is a record whole, what stands in it, and its readings for a spreadsheet. */
import { type Channel, CHANNEL_UNIT, channelShape } from '@hoopwright/wire/reading';
import {
  type About,
  type Entry,
  headGroups,
  parseHead,
  readAboutLine,
  readEntryLine,
  readingsCsv,
  type Verdict,
  verdictSentence,
} from '@hoopwright/wire/record';
import type { Command } from 'commander';
import { fileLines, verifyRecordFile } from '../../store/recordFile.ts';
import { BAD_INPUT, type Desk, DONE, Ending, METAL_SAYS_NO, reasonOf } from '../desk/desk.ts';
import { entryText } from './entryText.ts';

export function recordCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  const record = program.command('record').description('records of tests, rehearsals and replays');
  record
    .command('verify')
    .description('is the record whole, and is it the one whose head was written down?')
    .argument('<file>', 'record file (NDJSON)')
    .option('--head <groups>', 'the head from the signed log sheet: 8 groups of 4 digits')
    .action((file: string, { head }: { head?: string }) => end(runVerify(desk, file, head)));
  record
    .command('show')
    .description('what stands in the record, line by line')
    .argument('<file>', 'record file (NDJSON)')
    .action((file: string) => end(runShow(desk, file)));
  record
    .command('export')
    .description('readings for a spreadsheet, or every entry')
    .argument('<file>', 'record file (NDJSON)')
    .option('--csv', 'readings as CSV on standard output')
    .option('--ndjson', 'every entry, one a line, on standard output')
    .option('--comma', 'decimal comma, fields parted by semicolons')
    .action((file: string, options: ExportOptions) => end(runExport(desk, file, options)));
  // Commands of a command speak through the same desk.
  for (const one of record.commands)
    one
      .exitOverride()
      .configureOutput({ writeOut: (text) => desk.out(text), writeErr: (text) => desk.err(text) });
}

interface ExportOptions {
  readonly csv?: boolean;
  readonly ndjson?: boolean;
  readonly comma?: boolean;
}

function runVerify(desk: Desk, file: string, given: string | undefined): number {
  const head = given === undefined ? undefined : parseHead(given);
  if (given !== undefined && head === undefined)
    throw new Ending(BAD_INPUT, `--head: came "${given}", wanted 8 groups of 4 digits 0-9 a-f`);
  const verdict = verdictOn(file, head);
  desk.out(`${verdictSentence(verdict)}\n`);
  return verdict.kind === 'altered' || verdict.kind === 'other head' ? METAL_SAYS_NO : DONE;
}

function runShow(desk: Desk, file: string): number {
  const { about, verdict } = whole(file);
  const kind = about.kind === 'test' ? 'Test' : about.kind.toUpperCase();
  desk.out(`${kind}: ${about.title}\nBegun ${new Date(about.began_ms).toISOString()}\n\n`);
  for (const entry of entriesOf(file)) desk.out(`${entryText(entry, about.began_ms)}\n`);
  desk.out(`\n${verdictSentence(verdict)}\nHead: ${headGroups(verdict.digest)}\n`);
  return DONE;
}

function runExport(desk: Desk, file: string, { csv, ndjson, comma }: ExportOptions): number {
  if ((csv === true) === (ndjson === true))
    throw new Ending(BAD_INPUT, 'record export: say either --csv or --ndjson');
  const { about } = whole(file);
  if (csv === true) {
    const columns = channelsIn(file).map(({ name, reads }) => ({ channel: name, unit: CHANNEL_UNIT[reads] }));
    const style = { columns, decimal: comma === true ? ',' : '.' } as const;
    for (const row of readingsCsv(about, entriesOf(file), style)) desk.out(`${row}\r\n`);
    return DONE;
  }
  for (const entry of entriesOf(file)) desk.out(`${JSON.stringify({ record: about.kind, ...entry })}\n`);
  return DONE;
}

type Whole = Exclude<Verdict, { kind: 'altered' }>;

/** What an altered record says is not passed on. */
function whole(file: string): { readonly about: About; readonly verdict: Whole } {
  const verdict = verdictOn(file);
  if (verdict.kind !== 'altered') return { about: verdict.about, verdict };
  throw new Ending(METAL_SAYS_NO, `${file}: ${verdictSentence(verdict)}`);
}

function verdictOn(file: string, head?: string): Verdict {
  try {
    return verifyRecordFile(file, head);
  } catch (error) {
    throw new Ending(
      BAD_INPUT,
      `${file}: cannot be read (${reasonOf(error)}); give the path of a record file`,
    );
  }
}

function* entriesOf(file: string): Generator<Entry> {
  for (const line of fileLines(file)) {
    const link = readEntryLine(line);
    if (link.ok) yield link.value.entry;
    else if (!readAboutLine(line).ok)
      throw new Error(`the record file changed while it was read: ${link.why}`);
  }
}

/** Channels that the set-ups name, each once, in their order. */
function channelsIn(file: string): Channel[] {
  const found = new Map<string, Channel>();
  for (const { kind, body } of entriesOf(file)) {
    if (kind !== 'set-up' || !Array.isArray(body['channels'])) continue;
    for (const one of body['channels']) {
      const channel = channelShape.safeParse(one);
      if (channel.success) found.set(channel.data.name, channel.data);
    }
  }
  return [...found.values()];
}
