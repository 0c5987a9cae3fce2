/** Where readings come from, as the set-up of a day states it. */
import * as z from 'zod';
import { lineFormatShape } from './line.ts';
import { registerShape } from './register.ts';

const name = z.string().regex(/^[\p{L}\p{N} ._-]{1,40}$/u);
const path = z.string().min(1).max(500);
const every = z.number().min(20).max(60_000);

/**
 * How a source that was lost shows that it is itself: the serial number of its plug, or a line that begins so. Without
 * either it waits for a person.
 */
const proof = z
  .strictObject({
    serialNumber: z.string().min(1).exactOptional(),
    begins: z.string().min(1).exactOptional(),
  })
  .exactOptional();

const csv = z.strictObject({
  kind: z.literal('csv'),
  name,
  file: path,
  /** Heading of the column, and the channel that it is. */
  columns: z.record(z.string(), z.string().min(1)),
  separator: z.enum([',', ';', '\t']).exactOptional(),
  decimal: z.enum(['.', ',']).exactOptional(),
  /** How often the file is looked at, ms. */
  every_ms: every.exactOptional(),
});

const serial = z.strictObject({
  kind: z.literal('serial'),
  name,
  path,
  baud: z.int().min(50).max(4_000_000),
  line: lineFormatShape,
  proof,
});

const mqtt = z.strictObject({
  kind: z.literal('mqtt'),
  name,
  url: z.string().regex(/^mqtts?:\/\//),
  /** Topic, and how its messages are read. A message that is one bare number is the channel in `number`. */
  topics: z
    .array(
      z.strictObject({
        topic: z.string().min(1).max(200),
        line: lineFormatShape.exactOptional(),
        number: z.string().min(1).exactOptional(),
      }),
    )
    .min(1),
});

const http = z.strictObject({
  kind: z.literal('http'),
  name,
  /** Keys of each line, and the channels that they are. */
  names: z.record(z.string(), z.string().min(1)),
});

const polled = {
  registers: z.array(registerShape).min(1).max(64),
  unit: z.int().min(0).max(247),
  every_ms: every,
};

const modbusTcp = z.strictObject({
  kind: z.literal('modbus tcp'),
  name,
  host: z.string().min(1),
  port: z.int().min(1).max(65_535).exactOptional(),
  ...polled,
});

const modbusRtu = z.strictObject({
  kind: z.literal('modbus rtu'),
  name,
  path,
  baud: z.int().min(50).max(4_000_000),
  parity: z.enum(['none', 'even', 'odd']).exactOptional(),
  ...polled,
});

export const sourceShape = z.discriminatedUnion('kind', [csv, serial, mqtt, http, modbusTcp, modbusRtu]);
export type SourceSetUp = z.infer<typeof sourceShape>;
export type SourceKind = SourceSetUp['kind'];
export type SourceOf<K extends SourceKind> = Extract<SourceSetUp, { kind: K }>;

/** Channels that a source says it gives. */
export function channelsFrom(source: SourceSetUp): string[] {
  switch (source.kind) {
    case 'csv':
      return Object.values(source.columns);
    case 'serial':
      return channelsInLine(source.line);
    case 'mqtt':
      return source.topics.flatMap(({ line, number }) => [
        ...(line === undefined ? [] : channelsInLine(line)),
        ...(number === undefined ? [] : [number]),
      ]);
    case 'http':
      return Object.values(source.names);
    case 'modbus tcp':
    case 'modbus rtu':
      return source.registers.map(({ channel }) => channel);
  }
}

const channelsInLine = (line: z.infer<typeof lineFormatShape>): string[] =>
  line.form === 'fields' ? line.channels.flatMap((one) => one ?? []) : Object.values(line.names);
