/**
 * What a screen may ask of the running day. One order, one POST; the answer is the entry it became, or issues.
 * It never drives a pump or a valve: an order writes into the record and moves the plan on, nothing else.
 */
import * as z from 'zod';
import { ENDS } from '../reading/body.ts';

export const DAY_ROLES = ['director', 'note taker', 'pump', 'viewer'] as const;
export type DayRole = (typeof DAY_ROLES)[number];

const line = z.string().trim().min(1).max(500);
const by = z.string().trim().min(1).max(60);
const seq = z.int().min(1);
const values = z.record(z.string().min(1).max(60), z.number());

/** Every order names who gives it. `at_ms`: when it was so, wall clock, if that was before now. */
export const ORDERS = {
  /** A row of the log sheet: values by channel, in the channel's unit. */
  row: z.strictObject({
    order: z.literal('row'),
    by,
    values,
    at_ms: z.number().exactOptional(),
    how: z.enum(['by hand', 'typed in from paper']),
  }),
  /** Adds; the row it corrects stays. */
  correct: z.strictObject({ order: z.literal('correct'), by, corrects: seq, values, why: line }),
  remark: z.strictObject({
    order: z.literal('remark'),
    by,
    text: line,
    photo: z.string().length(64).exactOptional(),
    place: z.string().max(60).exactOptional(),
  }),
  measure: z.strictObject({
    order: z.literal('measure'),
    by,
    when: z.enum(['before', 'after']),
    what: z.enum(['girth', 'wall', 'height', 'mass', 'fill']),
    place: z.string().max(60).exactOptional(),
    value: z.number(),
    with: line,
  }),
  'vent shut': z.strictObject({ order: z.literal('vent shut'), by }),
  /** On to the next step of the plan. `from`: the step that the screen shows, so that two presses are one. */
  'go on': z.strictObject({ order: z.literal('go on'), by, from: z.string() }),
  'hold ended': z.strictObject({ order: z.literal('hold ended'), by, from: z.string(), why: line }),
  'bleed again': z.strictObject({ order: z.literal('bleed again'), by, why: line }),
  'stop and release': z.strictObject({ order: z.literal('stop and release'), by, why: line }),
  /** After a restart: a fresh reading of a gauge, and the step it finds. */
  'confirm step': z.strictObject({ order: z.literal('confirm step'), by, step: z.string(), values }),
  acknowledge: z.strictObject({ order: z.literal('acknowledge'), by, cause: seq }),
  'set aside': z.strictObject({ order: z.literal('set aside'), by, channel: z.string(), why: line }),
  'take back': z.strictObject({ order: z.literal('take back'), by, channel: z.string(), why: line }),
  /** A person says that a source which came back is itself. */
  'accept source': z.strictObject({ order: z.literal('accept source'), by, source: z.string() }),
  'sound armed': z.strictObject({ order: z.literal('sound armed'), by }),
  /** The director gives the role to whoever holds another link. */
  'hand over': z.strictObject({ order: z.literal('hand over'), by, to: by }),
  /** Another frozen plan of the same tank, made on the day; told with its reason. */
  'new revision': z.strictObject({ order: z.literal('new revision'), by, digest: z.string(), why: line }),
  end: z.strictObject({ order: z.literal('end'), by, end: z.enum(ENDS), why: line }),
} as const;

export const orderShape = z.discriminatedUnion('order', [
  ORDERS.row,
  ORDERS.correct,
  ORDERS.remark,
  ORDERS.measure,
  ORDERS['vent shut'],
  ORDERS['go on'],
  ORDERS['hold ended'],
  ORDERS['bleed again'],
  ORDERS['stop and release'],
  ORDERS['confirm step'],
  ORDERS.acknowledge,
  ORDERS['set aside'],
  ORDERS['take back'],
  ORDERS['accept source'],
  ORDERS['sound armed'],
  ORDERS['hand over'],
  ORDERS['new revision'],
  ORDERS.end,
]);
export type Order = z.infer<typeof orderShape>;
export type OrderName = Order['order'];

const NOTES: readonly OrderName[] = ['row', 'correct', 'remark', 'measure', 'sound armed'];
const ALL: readonly OrderName[] = orderShape.options.map(({ shape }) => shape.order.value);

/** Only the director's own entry moves the plan on. */
export const MAY: Readonly<Record<DayRole, readonly OrderName[]>> = {
  director: ALL,
  'note taker': NOTES,
  pump: ['row', 'remark', 'sound armed'],
  viewer: [],
};
