import { expect, test } from 'vitest';
import type { Channel } from '@hoopwright/wire/reading';
import { channelShape, sourceShape } from '@hoopwright/wire/reading';
import { SOURCE_FIELDS, SOURCE_KINDS, type TypedWires } from './typed.ts';
import { begunWith, comesBy, readWires } from './wiresOf.ts';

const channel = (name: string, reads: Channel['reads']): Channel => ({
  name,
  reads,
  by: 'x',
  from: 'behind the wall',
  upTo_bar: 27,
  resolution: 0.1,
});
const OWN = [channel('gauge 1', 'pressure'), channel('middle', 'girth'), channel('top', 'girth')];

/** Each kind as a person fills it in. */
const FILLED = {
  csv: { file: '~/log.csv', columns: 'P1 [bar] = gauge 1\nG = middle', separator: '\t', decimal: ',' },
  serial: { path: '/dev/ttyACM0', form: 'fields', names: 'middle, -, top', begins: '#box 7' },
  mqtt: { url: 'mqtt://192.168.4.2:1883', topics: 'tank/p1 = gauge 1\ntank/girths/+ key low = middle' },
  http: { names: 'p = gauge 1' },
  'modbus tcp': {
    host: '192.168.4.9',
    registers: 'input 0 int16 x 0,01 = gauge 1\nholding 8 float32 low first = top',
  },
  'modbus rtu': { path: '/dev/ttyUSB3', registers: 'holding 0 int32 x 0.001 = middle', parity: 'odd' },
} as const;
const wires = (kind: keyof typeof FILLED, more: Readonly<Record<string, string>> = {}): TypedWires => ({
  sources: [{ kind, fields: { ...SOURCE_FIELDS[kind], ...FILLED[kind], ...more } }],
  channels: [],
});

test('every kind of wire, filled in, is what the server takes', () => {
  for (const kind of SOURCE_KINDS) {
    const read = readWires(wires(kind), OWN);
    expect(read.wrong, kind).toBeUndefined();
    const [source] = begunWith(read).sources ?? [];
    expect(sourceShape.safeParse(source).error, kind).toBeUndefined();
  }
  expect(begunWith(readWires(wires('modbus tcp'), OWN)).sources).toEqual([
    {
      kind: 'modbus tcp',
      name: 'converter',
      host: '192.168.4.9',
      port: 502,
      unit: 1,
      every_ms: 200,
      registers: [
        { channel: 'gauge 1', table: 'input', address: 0, as: 'int16', scale: 0.01 },
        { channel: 'top', table: 'holding', address: 8, as: 'float32', scale: 1, words: 'low first' },
      ],
    },
  ]);
});

test('as it is first asked for, every kind says what is still wanted', () => {
  for (const kind of SOURCE_KINDS) {
    const read = readWires({ sources: [{ kind, fields: SOURCE_FIELDS[kind] }], channels: [] }, OWN);
    expect(read.wrong, kind).toMatch(/wanted/);
  }
});

test('each wrong field has a sentence of its own: what came, what was wanted', () => {
  const wrong = [
    ['serial', { baud: 'fast' }, 'baud', /"fast" does not fit: wanted a whole number from 50 to 4000000/],
    [
      'csv',
      { columns: 'P1 [bar] = gauge 9' },
      'columns',
      /"gauge 9" is no channel of this day: wanted one of gauge 1, middle, top/,
    ],
    ['csv', { columns: 'P1 [bar]' }, 'columns', /"P1 \[bar\]" does not fit: wanted a line such as/],
    ['mqtt', { url: '192.168.4.2' }, 'url', /wanted an address such as mqtt:/],
    ['modbus rtu', { registers: 'coil 3 = middle' }, 'registers', /"coil 3" does not fit/],
    ['modbus tcp', { every_ms: '1,500' }, 'every_ms', /1.5 or 1500/],
    ['http', { name: 'a/b' }, 'name', /"a\/b" does not fit/],
  ] as const;
  for (const [kind, more, field, says] of wrong) {
    const [read] = readWires(wires(kind, more), OWN).sources;
    expect(read.ok ? {} : Object.keys(read.faults), kind).toEqual([field]);
    expect(read.ok ? '' : read.faults[field]).toMatch(says);
  }
});

test('a channel comes by one wire, and two wires have two names', () => {
  const [one] = wires('http').sources;
  const other = { ...one, fields: { ...one.fields, name: 'second' } };
  expect(readWires({ sources: [one, other], channels: [] }, OWN).wrong).toMatch(
    /gauge 1 comes by node already/,
  );
  expect(readWires({ sources: [one, one], channels: [] }, OWN).wrong).toMatch(
    /another wire of the name node/,
  );
  expect(comesBy(readWires(wires('csv'), OWN)).get('middle')).toBe('logger');
});

test('channels are the plan’s with what was typed over it, or added; half a range is no range', () => {
  const typed = (fields: Readonly<Record<string, string>>, name = 'middle', reads?: string): TypedWires => ({
    sources: [],
    channels: [{ name, fields, ...(reads === undefined ? {} : { reads }) }],
  });
  const full = { noise: '0,05', from: '1000', to: '1400', gain: '0.1', offset: '-0.4', fresh_s: '3' };
  const [middle] = begunWith(readWires(typed(full), OWN)).channels ?? [];
  const calibration = { gain: 0.1, offset: -0.4 };
  expect(middle).toEqual({
    ...OWN[1],
    noise: 0.05,
    range: { from: 1000, to: 1400 },
    calibration,
    fresh_s: 3,
  });
  const [air] = begunWith(readWires(typed({ by: 'probe' }, 'water', 'temperature'), OWN)).channels ?? [];
  expect(channelShape.safeParse(air).error).toBeUndefined();
  expect(air).toMatchObject({ name: 'water', reads: 'temperature', by: 'probe' });
  expect(readWires(typed({ from: '3' }), OWN).wrong).toMatch(/give both, or none/);
  expect(readWires(typed({ from: '5', to: '4' }), OWN).wrong).toMatch(/turn them round/);
  expect(readWires(typed({ gain: '0' }), OWN).wrong).toMatch(/not 0/);
  expect(begunWith(readWires(typed({ noise: ' ' }), OWN))).toEqual({});
});
