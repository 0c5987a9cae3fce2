/** Why a record cannot be written just now, as the screens are told. */
import type { TroubleKind } from '../../driver/base.ts';

export const unwritten = (kind: TroubleKind): keyof typeof UNWRITTEN =>
  kind === 'locked' ? 'base locked' : 'disk full';

export const UNWRITTEN = {
  'disk full': 'The disk is full. Readings are kept in memory; make room, and they are written.',
  'base locked':
    'The record cannot be written: another program holds it. Readings are kept in memory until it lets go.',
} as const;
