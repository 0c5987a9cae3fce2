/** What a page sends beside orders: how a day is begun, a link, a fault of a rehearsal. */
import * as z from 'zod';
import { reader } from '../project/reader.ts';
import { channelShape } from '../reading/channel.ts';
import { sourceShape } from '../reading/wire/source.ts';
import { DAY_ROLES, orderShape } from './order.ts';

const name = z.string().trim().min(1).max(60);

export const beginShape = z.strictObject({
  project: z.string().min(1),
  plan: z.string().regex(/^[0-9a-f]{64}$/),
  kind: z.enum(['test', 'rehearsal']),
  director: name,
  sources: z.array(sourceShape).max(32).exactOptional(),
  channels: z.array(channelShape).max(64).exactOptional(),
  mirror: z.string().min(1).max(500).exactOptional(),
  rehearsal: z
    .strictObject({
      seed: z.int().min(0),
      speed: z.number().min(1).max(200),
      faults: z.array(z.string().max(60)).max(20),
      readings: z.enum(['by hand', 'by wires']),
      tank: z.enum(['as welded', 'as left']).exactOptional(),
    })
    .exactOptional(),
});

export const readBegin = reader(beginShape);
export const readOrder = reader(orderShape);
export const readDayLink = reader(z.strictObject({ role: z.enum([...DAY_ROLES, 'source']), name }));
export const FAULT_NAMES = [
  'leak',
  'gauge-stuck',
  'gauge-drifting',
  'wire-slipping',
  'air',
  'server-restart',
  'burst',
] as const;
export const readFaultNow = reader(z.strictObject({ fault: z.enum(FAULT_NAMES) }));
