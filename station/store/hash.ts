/** SHA-256 as Node has it, and names made by dice. */
import { createHash } from 'node:crypto';
import type { ChainHash } from '@hoopwright/wire/record';

export const sha256 = (bytes: Uint8Array | string): string =>
  createHash('sha256').update(bytes).digest('hex');

export const chainHash: ChainHash = (previous, text) =>
  createHash('sha256').update(previous, 'hex').update(text, 'utf8').digest('hex');

/** 16 hex digits: enough that two never meet on one laptop, short enough for an address. */
export const freshId = (dice: (bytes: number) => Uint8Array): string => Buffer.from(dice(8)).toString('hex');

/** 192 bits, in letters that survive a link. */
export const freshSecret = (dice: (bytes: number) => Uint8Array): string =>
  Buffer.from(dice(24)).toString('base64url');
