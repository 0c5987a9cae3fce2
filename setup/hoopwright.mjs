#!/usr/bin/env node
/** The command `hoopwright`: brings the bundle up to date where sources have changed, then runs it. */
import { requireNode } from './install.mjs';
import { ensurePage, ensureProgram } from './build.mjs';
import { existsInRoot } from './folders.mjs';
import { say } from './run.mjs';

requireNode();
if (!existsInRoot('node_modules')) {
  say('The libraries are not installed yet: run `npm start` once in this folder.');
  process.exit(1);
}
await ensureProgram();
if (process.argv[2] === 'serve') await ensurePage();
await import(new URL('../dist/hoopwright.mjs', import.meta.url).href);
