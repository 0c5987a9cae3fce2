#!/usr/bin/env node
/** The command `hoopwright`. */
import { existsInRoot } from './folders.mjs';
import { requireNode } from './install.mjs';
import { runProgram } from './program.mjs';
import { say } from './run.mjs';

requireNode();
if (!existsInRoot('node_modules')) {
  say('The libraries are not installed yet: run `npm start` once in this folder.');
  process.exit(1);
}
const words = process.argv.slice(2);
await runProgram(words, { page: words[0] === 'serve' });
