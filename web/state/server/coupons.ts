/** Coupon files of the project: dropped, kept with it, named in the tank file. */
import { changeDraft } from '../file/change.ts';
import { useBoard } from '../board.ts';
import { type FileDraft, isList, isRecord, type Json, valueAt, withValue, without } from '../file/edit.ts';
import { server } from './server.ts';
import { couponsChanged } from './steel.ts';

export const COUPON_KINDS = ['coupons', 'seamCoupons'] as const;
export type CouponKind = (typeof COUPON_KINDS)[number];

/** What the tank file says of a coupon; more keys are handed on as they are. */
export type CouponEntryFile = FileDraft & {
  readonly file: string;
  readonly name?: string;
  readonly excluded?: string;
};

export interface CouponRow {
  readonly kind: CouponKind;
  readonly index: number;
  readonly entry: CouponEntryFile;
}

export const couponRows = (draft: FileDraft): CouponRow[] =>
  COUPON_KINDS.flatMap((kind) =>
    entriesOf(draft, kind).flatMap((entry, index) => (isCoupon(entry) ? [{ kind, index, entry }] : [])),
  );

function entriesOf(draft: FileDraft, kind: CouponKind): readonly Json[] {
  const list = valueAt(draft, `steel.${kind}`);
  return isList(list) ? list : [];
}

const isCoupon = (entry: Json): entry is CouponEntryFile =>
  isRecord(entry) && typeof entry['file'] === 'string';

/** Name of the attachment: the last part of the path in the tank file. */
export const attachmentName = (file: string): string => file.replace(/^.*[\\/]/, '');

/** 16 MB, as the server takes them. */
const MOST_BYTES = 16_000_000;

/** Keeps the files with the project and names them in the tank file. Gives the names that were too large. */
export async function addCoupons(files: readonly File[], kind: CouponKind): Promise<string[]> {
  const { project } = useBoard.getState();
  if (project === undefined) return [];
  const refused: string[] = [];
  for (const file of files) {
    if (file.size > MOST_BYTES) {
      refused.push(file.name);
      continue;
    }
    await server.attach(project.id, file.name, base64Of(new Uint8Array(await file.arrayBuffer())));
    couponsChanged();
    const { draft } = useBoard.getState();
    const there = entriesOf(draft, kind);
    const named = there.some((one) => isCoupon(one) && attachmentName(one.file) === file.name);
    if (named) changeDraft({ ...draft });
    else
      changeDraft(
        withValue(draft, `steel.${kind}`, [
          ...there,
          { file: file.name, name: file.name.replace(/\.[^.]*$/, '') },
        ]),
      );
  }
  return refused;
}

const CHUNK = 0x8000;

function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += CHUNK) text += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  return btoa(text);
}

/** Bytes of a coupon's file; undefined where the project has none of that name. */
export async function couponBytes(project: string, file: string): Promise<Uint8Array | undefined> {
  const all = await server.attachments(project);
  const found = all.filter(({ name }) => name === attachmentName(file)).at(-1);
  return found === undefined ? undefined : server.bytes(project, found.id);
}

/** A test that does not count stays visible with its reason; without one it counts again. */
export function exclude({ kind, index }: CouponRow, reason: string | undefined): void {
  changeDraft(withValue(useBoard.getState().draft, `steel.${kind}[${index}].excluded`, reason));
}

export const removeCoupon = ({ kind, index }: CouponRow): void =>
  changeDraft(without(useBoard.getState().draft, `steel.${kind}[${index}]`));
