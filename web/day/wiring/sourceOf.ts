/** A typed source as the set-up states it, or what is wrong with it, field by field. */
import type { Register, SourceSetUp } from '@hoopwright/wire/reading';
import { say } from '../../words/day/say.ts';
import { type Faults, FieldReader } from './reading.ts';
import type { TypedSource } from './typed.ts';

export type SourceRead =
  | { readonly ok: true; readonly source: SourceSetUp }
  | { readonly ok: false; readonly faults: Faults };

const NAME = /^[\p{L}\p{N} ._-]{1,40}$/u;
const MQTT = /^mqtts?:\/\/[^/\s]+/;
const FASTEST_MS = 20;
const SLOWEST_MS = 60_000;
const LONGEST_BAUD = 4_000_000;

/** @param channels names that there are; @param others names of the other sources */
export function sourceOf(
  { kind, fields }: TypedSource,
  channels: readonly string[],
  others: readonly string[],
): SourceRead {
  const read = new FieldReader(fields);
  const name = read.text('name', say('wantedName'), (text) => NAME.test(text));
  if (others.includes(name)) read.fault('name', say('sourceTwice', { name }));
  const given = { read, name, channels, fields };
  const source = MAKE[kind](given);
  return Object.keys(read.faults).length === 0 ? { ok: true, source } : { ok: false, faults: read.faults };
}

interface Given {
  readonly read: FieldReader;
  readonly name: string;
  readonly channels: readonly string[];
  readonly fields: Readonly<Record<string, string>>;
}

const MAKE: Readonly<Record<SourceSetUp['kind'], (given: Given) => SourceSetUp>> = {
  csv: (given) => {
    const { read, name, fields } = given;
    return {
      kind: 'csv',
      name,
      file: read.text('file', say('wantedFile')),
      columns: namesIn(given, 'columns', say('wantedColumns')),
      separator: fields['separator'] === ',' || fields['separator'] === '\t' ? fields['separator'] : ';',
      decimal: pointOf(fields),
      every_ms: read.whole('every_ms', FASTEST_MS, SLOWEST_MS),
    };
  },
  serial: (given) => {
    const { read, name, fields } = given;
    const begins = (fields['begins'] ?? '').trim();
    return {
      kind: 'serial',
      name,
      path: read.text('path', say('wantedPath')),
      baud: read.whole('baud', 50, LONGEST_BAUD),
      line: lineOf(given),
      ...(begins === '' ? {} : { proof: { begins } }),
    };
  },
  mqtt: ({ read, name, channels }) => ({
    kind: 'mqtt',
    name,
    url: read.text('url', say('wantedUrl'), (text) => MQTT.test(text)),
    topics: read.lines('topics', say('wantedTopics')).map(({ left, right }) => {
      known(read, 'topics', channels, right);
      const [topic, key] = left.split(/\s+key\s+/);
      return key === undefined
        ? { topic, number: right }
        : { topic, line: { form: 'json' as const, names: { [key]: right } } };
    }),
  }),
  http: (given) => ({ kind: 'http', name: given.name, names: namesIn(given, 'names', say('wantedKeys')) }),
  'modbus tcp': (given) => ({
    kind: 'modbus tcp',
    name: given.name,
    host: given.read.text('host', say('wantedHost')),
    port: given.read.whole('port', 1, 65_535),
    ...polled(given),
  }),
  'modbus rtu': (given) => {
    const { parity } = given.fields;
    return {
      kind: 'modbus rtu',
      name: given.name,
      path: given.read.text('path', say('wantedPath')),
      baud: given.read.whole('baud', 50, LONGEST_BAUD),
      parity: parity === 'none' || parity === 'odd' ? parity : 'even',
      ...polled(given),
    };
  },
};

const pointOf = (fields: Given['fields']): '.' | ',' => (fields['decimal'] === ',' ? ',' : '.');

function known(read: FieldReader, field: string, channels: readonly string[], name: string): void {
  if (!channels.includes(name)) read.fault(field, say('noChannel', { name, channels: channels.join(', ') }));
}

function namesIn({ read, channels }: Given, field: string, wanted: string): Record<string, string> {
  return Object.fromEntries(
    read.lines(field, wanted).map(({ left, right }) => {
      known(read, field, channels, right);
      return [left, right];
    }),
  );
}

type Line = Extract<SourceSetUp, { kind: 'serial' }>['line'];

function lineOf(given: Given): Line {
  const { read, fields, channels } = given;
  const decimal = pointOf(fields);
  switch (fields['form']) {
    case 'json':
      return { form: 'json', names: namesIn(given, 'names', say('wantedKeys')) };
    case 'fields': {
      const text = read.text('names', say('wantedFields'));
      const names = text.split(/[,\n]/).map((one) => one.trim());
      for (const one of names) if (one !== '-' && text !== '') known(read, 'names', channels, one);
      const separator = fields['separator'] === '' ? ';' : (fields['separator'] ?? ';');
      return { form: 'fields', separator, channels: names.map((one) => (one === '-' ? null : one)), decimal };
    }
    default:
      return { form: 'pairs', names: namesIn(given, 'names', say('wantedKeys')), decimal };
  }
}

/** "input 0 int16 x 0.01" and, of two words, "low first". */
const REGISTER =
  /^(holding|input)\s+(\d{1,5})\s+(int16|uint16|int32|uint32|float32)(?:\s+x\s+(\S+))?(\s+low first)?$/;

function polled({ read, channels }: Given) {
  const wanted = say('wantedRegisters');
  const registers = read.lines('registers', wanted).flatMap(({ left, right }): Register[] => {
    known(read, 'registers', channels, right);
    const [, table, address, as, factor = '1', low] = REGISTER.exec(left) ?? [];
    const scale = Number(factor.replace(',', '.'));
    if (table === undefined || Number(address) > 65_535 || !Number.isFinite(scale)) {
      read.fault('registers', say('fieldNot', { typed: left, wanted }));
      return [];
    }
    return [
      {
        channel: right,
        table: table === 'input' ? 'input' : 'holding',
        address: Number(address),
        as: WORDS.find((one) => one === as) ?? 'int16',
        scale,
        ...(low === undefined ? {} : { words: 'low first' }),
      },
    ];
  });
  return {
    unit: read.whole('unit', 0, 247),
    every_ms: read.whole('every_ms', FASTEST_MS, SLOWEST_MS),
    registers,
  };
}

const WORDS = ['int16', 'uint16', 'int32', 'uint32', 'float32'] as const;
