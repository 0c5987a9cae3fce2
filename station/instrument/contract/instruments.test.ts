import { appendFileSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Aedes } from 'aedes';
import { ServerSerial, ServerTCP } from 'modbus-serial';
import { afterAll, describe } from 'vitest';
import type { Raw, Register } from '@hoopwright/wire/reading';
import { csvSource } from '../csv.ts';
import { httpSource } from '../http.ts';
import { modbusSource } from '../modbus.ts';
import { mqttSource } from '../mqtt.ts';
import { serialSource } from '../serial.ts';
import { type Bench, sourceContract } from './contract.ts';
import { hasTerminals, plugIn, type Terminal } from './terminal.ts';

const folder = mkdtempSync(join(tmpdir(), 'hoopwright-instruments-'));
afterAll(() => rmSync(folder, { recursive: true }));
let made = 0;
const fresh = (name: string): string => join(folder, `${(made += 1)}-${name}`);

/** Real time, twenty times as impatient: what waits half a second waits 25 ms. */
const later = (ms: number, work: () => void): (() => void) => {
  const timer = setTimeout(work, ms / 20);
  return () => clearTimeout(timer);
};

describe('a growing CSV file', () => {
  sourceContract(() => {
    const file = fresh('logger.csv');
    const begin = (): void => writeFileSync(file, 'time;girth;x;pressure\n1;1111,5;a;2,2\n');
    begin();
    const columns = { pressure: 'P1', girth: 'G2' };
    const bench: Bench = {
      source: csvSource({ kind: 'csv', name: 'logger', file, columns, separator: ';', decimal: ',' }, later),
      say: (values) => {
        const row = values === undefined ? '1;?;a;?' : `2;${comma(values['G2'])};b;${comma(values['P1'])}`;
        appendFileSync(file, `${row}\n`);
      },
      cut: () => Promise.resolve(renameSync(file, `${file}.old`)),
      mend: () => Promise.resolve(begin()),
      close: () => Promise.resolve(),
    };
    return Promise.resolve(bench);
  });
});

const comma = (value: number): string => String(value).replace('.', ',');

describe('HTTP lines', () => {
  sourceContract(() => {
    const source = httpSource({ kind: 'http', name: 'logger', names: { p: 'P1', g: 'G2' } });
    const bench: Bench = {
      source,
      say: async (values) => {
        const text =
          values === undefined ? '{"p": tru' : JSON.stringify({ p: values['P1'], g: values['G2'] });
        await source.send(pieces(Buffer.from(`${text}\n`)));
      },
      close: () => Promise.resolve(),
    };
    return Promise.resolve(bench);
  });
});

async function* pieces(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += 7) yield await Promise.resolve(bytes.subarray(at, at + 7));
}

describe('MQTT', () => {
  sourceContract(async () => {
    let broker = await startBroker(0);
    const { port } = broker;
    const topics = [
      { topic: 'tank/all', line: { form: 'json', names: { p: 'P1', g: 'G2' } } as const },
      { topic: 'gauge/+', number: 'P1' },
    ];
    return {
      source: mqttSource({ kind: 'mqtt', name: 'broker', url: `mqtt://127.0.0.1:${port}`, topics }, later),
      say: (values) =>
        broker.publish('tank/all', values && JSON.stringify({ p: values['P1'], g: values['G2'] })),
      cut: () => broker.stop(),
      mend: async () => void (broker = await startBroker(port)),
      close: () => broker.stop(),
    };
  });
});

async function startBroker(wanted: number) {
  const aedes = await Aedes.createBroker();
  const server = createServer(aedes.handle);
  const port = await listening(server, wanted);
  let stopped = false;
  return {
    port,
    publish: (topic: string, text: string | undefined): void => {
      const payload = text === undefined ? Buffer.from([0, 255, 254, 10, 13, 0]) : Buffer.from(text);
      aedes.publish({ cmd: 'publish', qos: 1, dup: false, retain: false, topic, payload }, () => {});
    },
    stop: async (): Promise<void> => {
      if (stopped) return;
      stopped = true;
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
      await new Promise<void>((resolve) => void server.close(() => resolve()));
    },
  };
}

const listening = (server: Server, port: number): Promise<number> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });

const registers: Register[] = [
  { channel: 'P1', table: 'holding', address: 20, as: 'int16', scale: 0.01 },
  { channel: 'G2', table: 'holding', address: 21, as: 'uint32', scale: 0.001, words: 'low first' },
];

/** What a device would hold. */
function memory() {
  const words = new Map<number, number>();
  return {
    put: (values: Raw): void => {
      const [pressure, girth] = [Math.round(values['P1'] * 100), Math.round(values['G2'] * 1000)];
      words.set(20, pressure & 0xffff);
      words.set(21, girth & 0xffff);
      words.set(22, girth >>> 16);
    },
    vector: { getHoldingRegister: (address: number) => words.get(address) ?? 0 },
  };
}

describe('Modbus TCP', () => {
  sourceContract(async () => {
    const { put, vector } = memory();
    const probe = createServer();
    const port = await listening(probe, 0);
    await new Promise<void>((resolve) => void probe.close(() => resolve()));
    const start = (): Promise<ServerTCP> =>
      new Promise((resolve) => {
        const server = new ServerTCP(vector, { host: '127.0.0.1', port, unitID: 3 });
        server.on('initialized', () => resolve(server));
      });
    let server: ServerTCP | undefined = await start();
    const stop = async (): Promise<void> => {
      const going = server;
      server = undefined;
      if (going === undefined) return;
      for (const socket of going.socks.keys()) socket.destroy();
      await new Promise<void>((resolve) => going.close(() => resolve()));
    };
    const setUp = {
      kind: 'modbus tcp',
      name: 'box',
      host: '127.0.0.1',
      port,
      unit: 3,
      every_ms: 200,
      registers,
    } as const;
    return {
      source: modbusSource(setUp, later),
      say: (values) => values && put(values),
      polled: true,
      cut: stop,
      mend: async () => void (server = await start()),
      close: stop,
    };
  });
});

describe.skipIf(!hasTerminals())('a serial line (needs pseudo-terminals)', () => {
  sourceContract(async () => {
    const path = fresh('tty');
    let terminal: Terminal | undefined = await plugIn(path);
    const line = { form: 'pairs', names: { P: 'P1', G: 'G2' } } as const;
    const setUp = {
      kind: 'serial',
      name: 'box',
      path,
      baud: 115_200,
      line,
      proof: { begins: '#box 7' },
    } as const;
    const pull = async (): Promise<void> => {
      await terminal?.pull();
      terminal = undefined;
    };
    return {
      source: serialSource(setUp, { later, serialNumber: () => Promise.resolve(undefined) }),
      say: (values) => {
        const text =
          values === undefined ? '\u0000\u00ff\u0007 garbage' : `P=${values['P1']} G=${values['G2']}`;
        terminal?.say(`#box 7\r\n${text}\r\n`);
      },
      cut: pull,
      mend: async () => {
        terminal = await plugIn(path);
        // It names itself, again and again, as such boxes do.
        const name = (): void => terminal?.say('#box 7\r\n');
        const timer = setInterval(name, 20);
        setTimeout(() => clearInterval(timer), 2000).unref();
      },
      close: pull,
    };
  });
});

describe.skipIf(!hasTerminals())('Modbus RTU (needs pseudo-terminals)', () => {
  sourceContract(async () => {
    const { put, vector } = memory();
    const [path, other] = [fresh('tty'), fresh('tty')];
    const [ours, theirs] = [await plugIn(path), await plugIn(other)];
    ours.heard((bytes) => theirs.say(bytes));
    theirs.heard((bytes) => ours.say(bytes));
    const server = new ServerSerial(vector, { path: other, baudRate: 19_200, unitID: 3 });
    const setUp = {
      kind: 'modbus rtu',
      name: 'box',
      path,
      baud: 19_200,
      unit: 3,
      every_ms: 200,
      registers,
    } as const;
    return {
      source: modbusSource(setUp, later),
      say: (values) => values && put(values),
      polled: true,
      close: async () => {
        await new Promise<void>((resolve) => server.close(() => resolve()));
        await ours.pull();
        await theirs.pull();
      },
    };
  });
});
