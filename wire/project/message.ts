/** What the page sends: each message is read strictly, and what is wrong comes back as issues. */
import * as z from 'zod';
import { ROLES } from './project.ts';
import { tankText } from './projectFile.ts';
import { reader } from './reader.ts';

// eslint-disable-next-line no-control-regex -- names are shown on one line, so control characters are refused
const ONE_LINE = /^(?=.*\S)[^\u0000-\u001f\u007f]{1,120}$/u;
const name = z.string().regex(ONE_LINE).describe('on one line, 1 to 120 characters');
const version = z.int().min(1).describe('number of a version');
/** 16 MB of bytes: a coupon of 10⁵ rows takes 3. */
const base64 = z.base64().max(22_400_000).describe('the bytes in base64, 16 MB at most');
const by = name.exactOptional();
const note = z.string().max(500).describe('up to 500 characters').exactOptional();

export const readCreate = reader(z.strictObject({ name, file: tankText, by }));
export const readRename = reader(z.strictObject({ name, by }));
export const readCopy = reader(z.strictObject({ name, by }));
export const readSave = reader(
  z.strictObject({
    basedOn: version.describe('number of the version that was edited'),
    file: tankText,
    by,
    note,
  }),
);
/** An undo or redo names the version that stands in the window. */
export const readStep = reader(z.strictObject({ from: version, by }));
/** A plan is frozen of the version that stands in the window. */
export const readFreeze = reader(
  z.strictObject({
    window: name.describe('name of the window; its newest request wins'),
    version: version.describe('number of the version that is planned'),
    name: name.describe('name of the plan'),
    revision: z.string().regex(ONE_LINE).max(12).describe('revision, 1 to 12 characters, e.g. B'),
    date: z.iso.date().describe('day of freezing, e.g. 2026-10-03'),
    by,
  }),
);
export const readAttach = reader(z.strictObject({ name, base64, by }));
export const readEntrance = reader(z.strictObject({ token: z.string().max(200) }));
export const readNewToken = reader(z.strictObject({ label: name, role: z.enum(ROLES) }));
export const readForecast = reader(
  z.strictObject({ window: name.describe('name of the window; its newest request wins'), file: z.unknown() }),
);

export type Create = Extract<ReturnType<typeof readCreate>, { ok: true }>['value'];
export type Save = Extract<ReturnType<typeof readSave>, { ok: true }>['value'];
