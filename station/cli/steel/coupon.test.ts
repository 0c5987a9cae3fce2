import { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { couponCommand } from './coupon.ts';
import { type Desk, Ending } from '../desk/desk.ts';

const example = (name: string) =>
  fileURLToPath(new URL(`../../../examples/coupons/${name}`, import.meta.url));
const EXAMPLES = [
  'plate-1.csv',
  'plate-2.csv',
  'plate-3-slipped.csv',
  'plate-4.txt',
  'seam-1.csv',
  'seam-2.csv',
];

/** Runs the command with files at hand; `-` is what came on standard input. */
const run = async (words: readonly string[], files: Readonly<Record<string, string>> = {}) => {
  const result = { out: '', err: '', code: -1, written: {} as Record<string, string> };
  const bytes = async (path: string) => {
    if (path in files) return new TextEncoder().encode(files[path]);
    return await readFile(path);
  };
  const desk: Desk = {
    read: async (path) => new TextDecoder().decode(await bytes(path)),
    readBytes: bytes,
    write: async (path, text) => void (result.written[path] = String(text)),
    out: (text) => void (result.out += text),
    err: (text) => void (result.err += text),
    seconds: () => 0,
    terminal: false,
  };
  const program = new Command('hoopwright').exitOverride();
  couponCommand(program, desk, (code) => void (result.code = code));
  for (const command of program.commands)
    command.exitOverride().configureOutput({ writeErr: (text) => desk.err(text) });
  await program.parseAsync(['coupon', ...words], { from: 'user' });
  return result;
};

describe('the invented coupons of the demo', () => {
  test('give the figures they were made with', async () => {
    const { out, code } = await run([...EXAMPLES.map(example), '--json']);
    const list = JSON.parse(out);
    expect(code).toBe(0);
    // The laws these were made from: Rp0.2 278.9, 275.5, 277.1, 281.4; Rm 613.4, 618.7, 615.2, 610.7 MPa.
    const proofs = [278.9, 275.5, 277.1, 281.4];
    const strengths = [613.4, 618.7, 615.2, 610.7];
    for (const k of [0, 1, 2, 3]) {
      expect(Math.abs(list[k].Rp02_MPa / proofs[k] - 1)).toBeLessThan(0.01);
      expect(Math.abs(list[k].Rm_MPa / strengths[k] - 1)).toBeLessThan(0.005);
    }
    expect(list.map((entry: { invented?: true }) => entry.invented)).toEqual(Array(6).fill(true));
  });

  test('keep the slipped one in the list with its reason', async () => {
    const { out } = await run([...EXAMPLES.map(example), '--json']);
    const slipped = JSON.parse(out)[2];
    expect(slipped).toMatchObject({ usable: false, Ag_percent: null, A_percent: null });
    expect(slipped.reasons[0]).toMatch(/^line \d+: the extension jumps/);
  });

  test('compare the seam with the usable plates', async () => {
    const { out } = await run([...EXAMPLES.map(example), '--json']);
    const [one, two] = JSON.parse(out).slice(4);
    expect(one.seam).toMatchObject({ broke: 'seam', matchOf: 'metal' });
    expect(two.seam).toMatchObject({ broke: 'heat-affected zone' });
    expect(one.seam.strengthFactor).toBeLessThan(1);
    expect(one.seam.match.every(({ verdict }: { verdict: string }) => verdict === 'over')).toBe(true);
  });
});

test('a table goes to standard output, warnings to the other', async () => {
  const { out, err, code } = await run([example('plate-2.csv')]);
  expect(out).toMatch(/Rp0\.2 MPa/);
  expect(out).toContain('invented');
  expect(err).toMatch(/plate-2\.csv: line \d+: unloading/);
  expect(code).toBe(0);
});

test('the list has exactly the keys that were promised, null where nothing was measured', async () => {
  const { out } = await run([example('plate-3-slipped.csv'), '--json']);
  const [entry] = JSON.parse(out);
  for (const key of [
    'file',
    'E_MPa',
    'Rp02_MPa',
    'Rp10_MPa',
    'Rm_MPa',
    'Ag_percent',
    'A_percent',
    'warnings',
  ])
    expect(entry).toHaveProperty(key);
  expect(entry.trueCurve).toBeUndefined();
});

test('a file with issues ends with 2, and the others are still given', async () => {
  const files = { bad: 'Strain (mm/mm),Stress (MPa)\n0.001,200\n0.002,nonsense\n' };
  const { out, err, code } = await run(['bad', example('plate-1.csv'), '--json'], files);
  const [bad, good] = JSON.parse(out);
  expect(code).toBe(2);
  expect(bad).toMatchObject({ file: 'bad', Rm_MPa: null, usable: false });
  expect(bad.issues).toHaveLength(1);
  expect(err).toMatch(/^bad: line \d/);
  expect(good.Rm_MPa).toBeGreaterThan(600);
});

test('standard input, columns and units come as said', async () => {
  const csv = (await readFile(example('plate-1.csv'), 'utf8'))
    .split('\n')
    .filter((line) => /^[-\d]/.test(line));
  const ksi = [
    'a,b,c',
    ...csv
      .map((line) => line.split(','))
      .map(([t, e, s]) => [t, Number(e) / 100, Number(s) / 6.894757].join(',')),
  ];
  const words = ['-', '--strain', 'b', '--stress', 'c', '--stress-unit', 'ksi', '--json'];
  const { out, code } = await run(words, { '-': ksi.join('\n') });
  expect(code).toBe(0);
  expect(Math.abs(JSON.parse(out)[0].Rp02_MPa / 278.9 - 1)).toBeLessThan(0.01);
});

test('--curve adds the true curve, --svg writes one drawing per test', async () => {
  const { out, written } = await run([
    example('plate-1.csv'),
    example('plate-4.txt'),
    '--json',
    '--curve',
    '--svg',
    'test.svg',
  ]);
  const [{ trueCurve }] = JSON.parse(out);
  expect(trueCurve.plastic).toHaveLength(trueCurve.stress_MPa.length);
  expect(trueCurve.ends).toBe('uniform');
  expect(Object.keys(written)).toEqual(['test-1.svg', 'test-2.svg']);
  expect(written['test-1.svg']).toContain('INVENTED DATA');
});

test('a file that is not there, and a number that is none, are bad input', async () => {
  await expect(run(['nowhere.csv'])).rejects.toBeInstanceOf(Ending);
  await expect(run([example('plate-1.csv'), '--area_mm2', 'wide'])).rejects.toThrow('positive number');
});
