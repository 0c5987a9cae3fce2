/** The adapter for each source of a set-up. */
import { readdirSync, readFileSync, realpathSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { SourceSetUp } from '@hoopwright/wire/reading';
import { csvSource } from '../instrument/csv.ts';
import { type HttpSource, httpSource } from '../instrument/http.ts';
import { modbusSource } from '../instrument/modbus.ts';
import { mqttSource } from '../instrument/mqtt.ts';
import { serialSource } from '../instrument/serial.ts';
import type { Later, Source } from '../instrument/source.ts';

export interface SourceParts {
  readonly later: Later;
  /** Sources that readings are sent to are put here under their names. */
  readonly http: Map<string, HttpSource>;
}

export function sourceFrom(setUp: SourceSetUp, { later, http }: SourceParts): Source {
  switch (setUp.kind) {
    case 'csv':
      return csvSource(setUp, later);
    case 'serial':
      return serialSource(setUp, { later, serialNumber: plugNumber });
    case 'mqtt':
      return mqttSource(setUp, later);
    case 'http': {
      const source = httpSource(setUp);
      http.set(setUp.name, source);
      return source;
    }
    case 'modbus tcp':
    case 'modbus rtu':
      return modbusSource(setUp, later);
  }
}

const BY_ID = '/dev/serial/by-id';

/** Linux: the name under by-id holds maker, model and serial number of the plug (systemd, 60-serial.rules). */
export async function plugNumber(path: string): Promise<string | undefined> {
  try {
    const real = realpathSync(path);
    const id = readdirSync(BY_ID).find((name) => realpathSync(join(BY_ID, name)) === real);
    if (id !== undefined) return id;
    return readFileSync(`/sys/class/tty/${basename(real)}/device/../../serial`, 'utf8').trim();
  } catch {
    return undefined;
  }
}
