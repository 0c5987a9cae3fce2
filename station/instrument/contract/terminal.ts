/** Pseudo-terminals for tests: what stands for an instrument on a serial line. Made by Python, which Node cannot do itself. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { rmSync, symlinkSync } from 'node:fs';

/** Copies between its standard input and output and a new terminal, whose path is the first line it prints. */
const ONE = `
import os, pty, select, sys, tty
master, slave = pty.openpty()
tty.setraw(slave)
sys.stderr.write(os.ttyname(slave) + "\\n"); sys.stderr.flush()
while True:
    for ready in select.select([0, master], [], [])[0]:
        data = os.read(ready, 65536)
        if not data: sys.exit(0)
        os.write(master if ready == 0 else 1, data)
`;

export const hasTerminals = (): boolean =>
  process.platform !== 'win32' &&
  spawnSync('python3', ['-c', 'import pty, os; m, s = pty.openpty(); print(os.ttyname(s))']).status === 0;

export interface Terminal {
  /** What the instrument says. */
  say(bytes: string | Uint8Array): void;
  heard(listener: (bytes: Buffer) => void): void;
  /** The plug is pulled. */
  pull(): Promise<void>;
}

/** Plugs an instrument in so that it is reached under `path`, as udev would have it. */
export async function plugIn(path: string): Promise<Terminal> {
  const child: ChildProcess = spawn('python3', ['-c', ONE], { stdio: ['pipe', 'pipe', 'pipe'] });
  const first = await new Promise<Buffer>((resolve) => void child.stderr?.once('data', resolve));
  rmSync(path, { force: true });
  symlinkSync(first.toString().trim(), path);
  // What is said to an instrument that has just been pulled is lost, as on a bench.
  child.stdin?.on('error', () => {});
  return {
    say: (bytes) => void child.stdin?.write(bytes),
    heard: (listener) => void child.stdout?.on('data', listener),
    pull: async () => {
      rmSync(path, { force: true });
      const ended = once(child, 'exit');
      child.kill();
      await ended;
    },
  };
}
