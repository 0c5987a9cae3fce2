/** What a day asks of the laptop: power, room on the disk, and that it does not fall asleep. Handed in, so that it can be tested. */
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, statfsSync } from 'node:fs';
import { join } from 'node:path';

export interface Laptop {
  power(): 'mains' | 'battery' | 'not known';
  /** MB free where the records are; undefined: not known. */
  free_MB(): number | undefined;
  /** Keeps it awake until the answer is called; undefined: it cannot be done here. */
  stayAwake(): (() => void) | undefined;
}

/** Under this it is told, MB: hours of readings at 12 channels and 100 Hz. Our choice. */
export const NEARLY_FULL_MB = 500;

const POWER = '/sys/class/power_supply';

/** @param dir folder of the base */
export const laptopAt = (dir: string): Laptop => ({
  power: () => powerIn(POWER),
  free_MB: () => {
    try {
      const { bavail, bsize } = statfsSync(dir);
      return Math.floor((bavail * bsize) / 1e6);
    } catch {
      return undefined;
    }
  },
  stayAwake: () => inhibited(),
});

/** Linux: a supply of type "Mains" says whether it is online (kernel.org, ABI sysfs-class-power). */
export function powerIn(folder: string): 'mains' | 'battery' | 'not known' {
  try {
    const supplies = readdirSync(folder).map((name) => ({
      type: textIn(join(folder, name, 'type')),
      online: textIn(join(folder, name, 'online')),
    }));
    if (supplies.some(({ type, online }) => (type === 'Mains' || type === 'USB') && online === '1'))
      return 'mains';
    return supplies.some(({ type }) => type === 'Battery') ? 'battery' : 'not known';
  } catch {
    return 'not known';
  }
}

const textIn = (file: string): string => {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    return '';
  }
};

const INHIBIT: Readonly<Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>>> = {
  linux: [
    'systemd-inhibit',
    '--what=sleep:idle',
    '--who=hoopwright',
    '--why=a tank is under pressure',
    'cat',
  ],
  darwin: ['caffeinate', '-i', 'cat'],
};

/** The tool lives as long as its standard input is open: it ends with this program, however that ends. */
function inhibited(): (() => void) | undefined {
  const words = INHIBIT[process.platform];
  if (words === undefined) return undefined;
  const [program, ...rest] = words;
  const child = spawn(program, rest, { stdio: ['pipe', 'ignore', 'ignore'] });
  child.on('error', () => {});
  if (child.pid === undefined) return undefined;
  child.unref();
  return () => void child.stdin.end();
}
