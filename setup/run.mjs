/** Starting other programs, the same way on Linux, macOS and Windows: no shell scripts, no shims where Node will do. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { inRoot, root } from './folders.mjs';

/** Data goes to standard output, words go here. @param {string} line */
export const say = (line) => void process.stderr.write(`${line}\n`);

/**
 * Runs a program in the clone and gives its exit code. What it prints is for people: standard output is kept for data.
 * @param {string} command
 * @param {string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, shell?: boolean }} [options] `env` goes on top of this one
 * @returns {Promise<number>}
 */
export function run(command, args, { env = {}, shell = false } = {}) {
  return new Promise((resolve) => {
    const whole = { ...process.env, ...env };
    const child = spawn(command, args, { cwd: root, stdio: ['inherit', 2, 2], env: whole, shell });
    child.on('error', (error) => {
      say(`${command} could not be started: ${error.message}`);
      resolve(127);
    });
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/**
 * npm is a .cmd file on Windows, which only a shell can start, and a shell wants one line. The words are our own, without spaces.
 * @param {string[]} args
 */
export const npm = (args) =>
  process.platform === 'win32' ? run(['npm.cmd', ...args].join(' '), [], { shell: true }) : run('npm', args);

/**
 * Runs the command of an installed package with this Node.
 * @param {string} name the package
 * @param {string[]} args
 * @param {{ bin?: string, env?: NodeJS.ProcessEnv }} [options] `bin` where the command is not called like the package
 */
export function tool(name, args, { bin = name.replace(/^.*\//, ''), env = {} } = {}) {
  const own = JSON.parse(readFileSync(inRoot('node_modules', name, 'package.json'), 'utf8'));
  const path = typeof own.bin === 'string' ? own.bin : own.bin[bin];
  return run(process.execPath, [inRoot('node_modules', name, path), ...args], { env });
}
