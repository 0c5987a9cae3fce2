/** Registers of a Modbus device, asked for again and again: over TCP, or over a serial line (RTU). */
import { Socket } from 'node:net';
import {
  fromWords,
  type Raw,
  type Register,
  type SourceOf,
  type Span,
  spansOf,
  wordsOf,
} from '@hoopwright/wire/reading';
import { client } from 'jsmodbus';
import { SerialPort } from 'serialport';
import { type Attempt, keepOpen } from './again.ts';
import type { Later, Source, Told } from './source.ts';

type SetUp = SourceOf<'modbus tcp'> | SourceOf<'modbus rtu'>;

const USUAL_PORT = 502;
/** A device that does not answer within this is gone, ms. */
const ANSWER_MS = 1000;

/** What asks for one run of registers. */
interface Asking {
  ask(span: Span): Promise<readonly number[]>;
  close(): void;
}

export function modbusSource(setUp: SetUp, later: Later): Source {
  const spans = spansOf(setUp.registers);
  return {
    name: setUp.name,
    start: (told) => {
      const stop = keepOpen({
        later,
        state: told.state,
        open: (attempt) => {
          let callOff: (() => void) | undefined;
          let over = false;
          const poll = async (asking: Asking): Promise<void> => {
            try {
              const raw = await asked(asking, spans, told);
              if (over) return;
              if (Object.keys(raw).length > 0) told.reading(raw);
              callOff = later(setUp.every_ms, () => void poll(asking));
            } catch (error) {
              attempt.gone(said(error));
            }
          };
          const watched: Attempt = {
            gone: attempt.gone,
            opened: () => {
              attempt.opened();
              void poll(asking);
            },
          };
          const asking = setUp.kind === 'modbus tcp' ? byTcp(setUp, watched) : byRtu(setUp, watched);
          return () => {
            over = true;
            callOff?.();
            asking.close();
          };
        },
      });
      return { accept: () => {}, stop };
    },
  };
}

async function asked(asking: Asking, spans: readonly Span[], told: Told): Promise<Raw> {
  const raw: Record<string, number> = {};
  for (const span of spans) {
    const words = await asking.ask(span);
    for (const register of span.registers) {
      const value = fromWords(wordsIn(words, span, register), register);
      if (value === undefined) told.bad(`${register.channel}: a pattern that is no number`);
      else raw[register.channel] = value;
    }
  }
  return raw;
}

const wordsIn = (words: readonly number[], { from }: Span, register: Register): readonly number[] =>
  words.slice(register.address - from, register.address - from + wordsOf(register));

function byTcp({ host, port = USUAL_PORT, unit }: SourceOf<'modbus tcp'>, attempt: Attempt): Asking {
  const socket = new Socket();
  const device = new client.TCP(socket, unit, ANSWER_MS);
  socket.on('connect', () => attempt.opened());
  socket.on('error', (error) => attempt.gone(error.message));
  socket.on('close', () => attempt.gone('the connection was closed'));
  socket.connect({ host, port });
  return { ask: (span) => answered(device, span), close: () => void socket.destroy() };
}

function byRtu({ path, baud, parity = 'none', unit }: SourceOf<'modbus rtu'>, attempt: Attempt): Asking {
  const port = new SerialPort({ path, baudRate: baud, parity, autoOpen: false });
  const device = new client.RTU(port, unit, ANSWER_MS);
  port.on('error', (error) => attempt.gone(error.message));
  port.on('close', () => attempt.gone('it was unplugged'));
  port.open((error) => {
    if (error) attempt.gone(error.message);
    else attempt.opened();
  });
  return {
    ask: (span) => answered(device, span),
    close: () => {
      if (port.isOpen) port.close();
    },
  };
}

type Device = InstanceType<typeof client.TCP> | InstanceType<typeof client.RTU>;

async function answered(device: Device, { table, from, count }: Span): Promise<readonly number[]> {
  const answer =
    table === 'holding'
      ? await device.readHoldingRegisters(from, count)
      : await device.readInputRegisters(from, count);
  return [...answer.response.body.valuesAsArray];
}

/** The library rejects with records of its own. */
function said(error: unknown): string {
  if (error instanceof Error) return error.message;
  if (typeof error !== 'object' || error === null || !('message' in error)) return 'no answer';
  return typeof error.message === 'string' ? error.message : 'no answer';
}
