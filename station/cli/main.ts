/** Entry of the program: the real desk. */
import { readFile, writeFile } from 'node:fs/promises';
import { performance } from 'node:perf_hooks';
import { createInterface } from 'node:readline';
import { buffer } from 'node:stream/consumers';
import type { Desk } from './desk/desk.ts';
import { run } from './run.ts';

const bytes = async (path: string): Promise<Uint8Array> =>
  path === '-' ? await buffer(process.stdin) : await readFile(path);

const desk: Desk = {
  read: async (path) => new TextDecoder().decode(await bytes(path)),
  readBytes: bytes,
  lines: () => createInterface({ input: process.stdin }),
  write: (path, text) => writeFile(path, text),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  seconds: () => performance.now() / 1000,
  terminal: process.stderr.isTTY && process.env['NO_COLOR'] === undefined,
};

// A closed pipe (| head) is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(process.argv.slice(2), desk);
