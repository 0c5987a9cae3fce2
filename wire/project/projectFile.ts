/** A project as one file to hand on: its tank file character for character, its versions, attachments and frozen plans. */
import * as z from 'zod';
import type { Issue } from '../issue/issue.ts';
import { readJson } from '../issue/jsonText.ts';
import { type FrozenPlan, looksFrozen } from '../plan/freeze.ts';
import { readLongJson } from './longJson.ts';
import { type Message, reader } from './reader.ts';

export const PROJECT_FORMAT = 'hoopwright project';

/** Also what a save takes at most. */
export const tankText = z.string().max(2_000_000).describe('the tank file as JSON text');

const version = z.strictObject({
  number: z.int().min(1),
  parent: z.int().min(1).exactOptional(),
  saved_ms: z.number(),
  by: z.string().exactOptional(),
  note: z.string().exactOptional(),
  file: tankText,
});

const attachment = z.strictObject({
  name: z.string(),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('SHA-256 of the bytes, 64 hex digits'),
  base64: z.base64().describe('the bytes in base64'),
});

const plan = z.strictObject({
  version: z.int().min(1).describe('number of the version that stood when it was frozen'),
  frozen_ms: z.number(),
  by: z.string().exactOptional(),
  /** Whether it is one, and whole, is judged apart: its keys stay in the order in which they were frozen. */
  frozen: z.record(z.string(), z.unknown()).describe('a frozen plan, as --freeze with --json writes it'),
});

const shape = z.strictObject({
  format: z.literal(PROJECT_FORMAT),
  version: z.literal(1),
  name: z.string(),
  current: z.int().min(1).describe('number of the version that stands'),
  versions: z.array(version).min(1),
  attachments: z.array(attachment),
  /** Oldest first. Older project files have none. */
  plans: z.array(plan).exactOptional(),
});

type Shape = Readonly<z.infer<typeof shape>>;

/** A frozen plan and what the store knows of it. */
export interface CarriedPlan extends Readonly<Omit<z.infer<typeof plan>, 'frozen'>> {
  readonly frozen: FrozenPlan;
}

export interface ProjectFile extends Omit<Shape, 'plans'> {
  readonly plans?: readonly CarriedPlan[];
}

const readShape = reader(shape);

/** Reads the text of a project file; versions and plans must hang together. Digests are for the receiver to check. */
export const readProjectFile = (text: string): Message<ProjectFile> => {
  const json = readLongJson(text);
  if (!json.ok) return json;
  const read = readShape(json.value);
  if (!read.ok) return read;
  const issues = [...versionIssues(read.value), ...planIssues(read.value)];
  if (issues.length > 0) return { ok: false, issues };
  const { plans, ...rest } = read.value;
  return { ok: true, value: { ...rest, ...(plans === undefined ? {} : { plans: plans.flatMap(carried) }) } };
};

export const projectFileText = (file: ProjectFile): string => `${JSON.stringify(file, undefined, 1)}\n`;

/** What is wrong within the text of a tank file, told at the place of the text. */
const fileIssues = (file: string, place: string): Issue[] => {
  const json = readJson(file);
  return json.ok ? [] : json.issues.map((issue) => ({ ...issue, path: `${place}, ${issue.path}` }));
};

const versionIssues = ({ current, versions }: Shape): Issue[] => {
  const issues: Issue[] = [];
  const known = new Set<number>();
  versions.forEach(({ number, parent, file }, i) => {
    const last = i === 0 ? 0 : versions[i - 1].number;
    if (number <= last) {
      issues.push({
        path: `versions[${i}].number`,
        expected: `a number over ${last}`,
        received: String(number),
      });
    }
    if (parent !== undefined && !known.has(parent)) {
      const expected = 'the number of an earlier version';
      issues.push({ path: `versions[${i}].parent`, expected, received: String(parent) });
    }
    issues.push(...fileIssues(file, `versions[${i}].file`));
    known.add(number);
  });
  if (!known.has(current)) {
    issues.push({
      path: 'current',
      expected: 'the number of one of the versions',
      received: String(current),
    });
  }
  return issues;
};

const planIssues = ({ versions, plans = [] }: Shape): Issue[] => {
  const given = new Set<string>();
  return plans.flatMap(({ version: from, frozen }, i): Issue[] => {
    const path = `plans[${i}]`;
    if (!looksFrozen(frozen)) {
      const expected = 'a frozen plan, as --freeze with --json writes it';
      return [{ path: `${path}.frozen`, expected, received: 'something else' }];
    }
    const { revision } = frozen.frozen;
    const issues: Issue[] = [];
    if (given.has(revision)) {
      const expected = 'a revision that no earlier plan of the file has';
      issues.push({ path: `${path}.frozen.frozen.revision`, expected, received: revision });
    }
    if (!versions.some(({ number }) => number === from)) {
      const expected = 'the number of one of the versions';
      issues.push({ path: `${path}.version`, expected, received: String(from) });
    }
    given.add(revision);
    return issues;
  });
};

const carried = ({ frozen, ...known }: z.infer<typeof plan>): CarriedPlan[] =>
  looksFrozen(frozen) ? [{ ...known, frozen }] : [];
