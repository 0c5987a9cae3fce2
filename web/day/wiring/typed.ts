/** Wires and channels of a day as they are typed; kept in this browser by project, so that they are typed once. */
import type { SourceKind } from '@hoopwright/wire/reading';

/** One source: its kind, and its fields as text. */
export interface TypedSource {
  readonly kind: SourceKind;
  readonly fields: Readonly<Record<string, string>>;
}

/** A channel as the set-up changes the plan's, or adds to it. Empty: as it is. */
export interface TypedChannel {
  readonly name: string;
  /** Of an added one; the plan's have theirs. */
  readonly reads?: string;
  readonly fields: Readonly<Record<string, string>>;
}

export interface TypedWires {
  readonly sources: readonly TypedSource[];
  readonly channels: readonly TypedChannel[];
}

export const NO_WIRES: TypedWires = { sources: [], channels: [] };

export const SOURCE_KINDS = ['csv', 'serial', 'mqtt', 'http', 'modbus tcp', 'modbus rtu'] as const;

/** Fields of each kind in the order in which they are asked for, with what stands there at first. */
export const SOURCE_FIELDS: Readonly<Record<SourceKind, Readonly<Record<string, string>>>> = {
  csv: { name: 'logger', file: '', columns: '', separator: ';', decimal: '.', every_ms: '200' },
  serial: {
    name: 'wire box',
    path: '/dev/serial/by-id/',
    baud: '115200',
    form: 'pairs',
    separator: ';',
    names: '',
    decimal: '.',
    begins: '',
  },
  mqtt: { name: 'broker', url: 'mqtt://', topics: '' },
  http: { name: 'node', names: '' },
  'modbus tcp': { name: 'converter', host: '', port: '502', unit: '1', every_ms: '200', registers: '' },
  'modbus rtu': {
    name: 'converter',
    path: '/dev/serial/by-id/',
    baud: '9600',
    parity: 'even',
    unit: '1',
    every_ms: '250',
    registers: '',
  },
};

export const CHANNEL_FIELDS = [
  'by',
  'resolution',
  'noise',
  'from',
  'to',
  'gain',
  'offset',
  'fresh_s',
] as const;

const KEY = 'hoopwright wires of ';

export function wiresOf(project: string): TypedWires {
  const kept: unknown = JSON.parse(localStorage.getItem(KEY + project) ?? 'null');
  return isWires(kept) ? kept : NO_WIRES;
}

export const keepWires = (project: string, wires: TypedWires): void =>
  localStorage.setItem(KEY + project, JSON.stringify(wires));

const isWires = (kept: unknown): kept is TypedWires =>
  typeof kept === 'object' &&
  kept !== null &&
  'sources' in kept &&
  Array.isArray(kept.sources) &&
  'channels' in kept &&
  Array.isArray(kept.channels);
