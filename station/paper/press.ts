/** Sets a paper and gives its PDF. Same input, same bytes. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PaperSource } from '@hoopwright/report/plan';
import { unwrapped } from './woff.ts';

/** The faces of the papers, from the package that the page uses too. */
const FACES = ['b612-latin-400-normal', 'b612-latin-700-normal'];

/** Thrown where the typesetter cannot be had on this machine; the message says what to do. */
export class NoPress extends Error {}

type Typesetter = typeof import('@myriaddreamin/typst-ts-node-compiler');

let kept: InstanceType<Typesetter['NodeCompiler']> | undefined;

/** @param source from `report`: a fixed template and the figures as data */
export async function pdfOf(source: PaperSource): Promise<Uint8Array> {
  const compiler = await compilerHere();
  const result = compiler.compile({ mainFileContent: source.template, inputs: { sheet: source.sheet } });
  const document = result.result;
  if (document === null || result.hasError()) {
    const found = result.takeDiagnostics();
    throw new Error(`the paper could not be set: ${JSON.stringify(found?.shortDiagnostics)}`);
  }
  return compiler.pdf(document, { creationTimestamp: source.created });
}

async function compilerHere(): Promise<InstanceType<Typesetter['NodeCompiler']>> {
  if (kept !== undefined) return kept;
  const { NodeCompiler } = await typesetter();
  // What was set before must not leak into what is set now: only the fonts are kept.
  kept = NodeCompiler.create({ fontArgs: [{ fontBlobs: fonts() }] });
  return kept;
}

async function typesetter(): Promise<Typesetter> {
  try {
    return await import('@myriaddreamin/typst-ts-node-compiler');
  } catch (error) {
    throw new NoPress(
      `The papers cannot be set on this machine: its typesetter has no build for ${process.platform} ${process.arch}. ` +
        'Print the plan from another laptop; the plan itself is the same there.',
      { cause: error },
    );
  }
}

function fonts(): Buffer[] {
  const find = createRequire(import.meta.url);
  return FACES.map((face) =>
    Buffer.from(unwrapped(readFileSync(find.resolve(`@fontsource/b612/files/${face}.woff`)))),
  );
}
