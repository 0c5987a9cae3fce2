/** `hoopwright demo`: the answer for the invented demo tank, with its drawing and its curve in out/. */
import { mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { type Desk, DONE } from '../desk/desk.ts';
import { answerFor } from '../forecast.ts';
import { headStart } from './headStart.ts';
import { runServe } from './serve.ts';

/** The bundle lies in dist/, beside examples/ and out/. */
const ROOT = new URL('../', import.meta.url);
const inRoot = (path: string): string => fileURLToPath(new URL(path, ROOT));

export function demoCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('demo')
    .description('forecast the invented demo tank, with its drawing and curve in out/')
    .action(async () => end(await runDemo(desk)));
  program
    .command('start')
    .description('the answer for the demo tank, then the drawing board in a browser on this laptop')
    .action(async () => {
      await runDemo(desk);
      end(await runServe(desk, {}));
    });
}

async function runDemo(desk: Desk): Promise<number> {
  const keeper = await headStart(inRoot('out/demo-solutions.json'));
  const { answer } = await answerFor(desk, inRoot('examples/dunlin-oxidiser.json'), {}, { keeper });
  await keeper.written();
  desk.out(`${answer.lines.join('\n')}\n`);
  await mkdir(inRoot('out'), { recursive: true });
  const drawing = inRoot('out/dunlin-oxidiser.svg');
  const curve = inRoot('out/dunlin-oxidiser-curve.svg');
  await desk.write(drawing, answer.drawing());
  await desk.write(curve, answer.curve());
  desk.err(`Drawing: ${drawing}\nCurve: ${curve}\n`);
  return DONE;
}
