/** Starting other programs, the same way on Linux, macOS and Windows: no shell scripts, no shims where Node will do. */
import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { inRoot, root } from './folders.mjs';

/** Data goes to standard output, words go here. @param {string} line */
export const say = (line) => void process.stderr.write(`${line}\n`);

/**
 * Runs a program in the clone with its output shown, and gives its exit code.
 * @param {string} command
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [extra] environment on top of this one
 * @returns {Promise<number>}
 */
export function run(command, args, extra = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...extra } });
    child.on('error', (error) => {
      say(`${command} could not be started: ${error.message}`);
      resolve(127);
    });
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/**
 * npm is a .cmd file on Windows, which only a shell can start; the arguments are our own words, without spaces.
 * @param {string[]} args
 */
export function npm(args) {
  if (process.platform !== 'win32') return run('npm', args);
  const { status } = spawnSync('npm.cmd', args, { cwd: root, stdio: 'inherit', shell: true });
  return Promise.resolve(status ?? 1);
}

/**
 * Runs the command of an installed package with this Node.
 * @param {string} name the package
 * @param {string[]} args
 * @param {{ bin?: string, env?: NodeJS.ProcessEnv }} [options] `bin` where the command is not called like the package
 */
export function tool(name, args, { bin = name.replace(/^.*\//, ''), env = {} } = {}) {
  const own = JSON.parse(readFileSync(inRoot('node_modules', name, 'package.json'), 'utf8'));
  const path = typeof own.bin === 'string' ? own.bin : own.bin[bin];
  return run(process.execPath, [inRoot('node_modules', name, path), ...args], env);
}
