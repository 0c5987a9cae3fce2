/** Messages of an MQTT broker. */
import { figure, LONGEST_LINE, readLine, type SourceOf } from '@hoopwright/wire/reading';
import { connect } from 'mqtt';
import { keepOpen } from './again.ts';
import type { Later, Source, Told } from './source.ts';

type Topic = SourceOf<'mqtt'>['topics'][number];

const CONNECT_MS = 5000;

export function mqttSource({ name, url, topics }: SourceOf<'mqtt'>, later: Later): Source {
  return {
    name,
    start: (told) => {
      const stop = keepOpen({
        later,
        state: told.state,
        open: ({ opened, gone }) => {
          const client = connect(url, { reconnectPeriod: 0, connectTimeout: CONNECT_MS, clean: true });
          let over = false;
          client.on('connect', () => {
            client.subscribe(
              topics.map(({ topic }) => topic),
              { qos: 1 },
              (error) => {
                if (error) gone(error.message);
                else opened();
              },
            );
          });
          client.on('error', (error) => gone(error.message));
          client.on('close', () => gone('the broker is gone'));
          client.on('message', (topic, payload) => {
            if (!over) for (const one of topics) if (fits(one.topic, topic)) message(one, payload, told);
          });
          return async () => {
            over = true;
            await client.endAsync(true);
          };
        },
      });
      return { accept: () => {}, stop };
    },
  };
}

function message({ line, number }: Topic, payload: Buffer, told: Told): void {
  if (payload.length > LONGEST_LINE) return told.bad(`a message of ${payload.length} bytes`);
  const text = payload.toString('utf8');
  const bare = number === undefined ? undefined : figure(text, '.');
  if (number !== undefined && bare !== undefined) return told.reading({ [number]: bare });
  if (line === undefined) return told.bad('a message that is no number');
  const read = readLine(text.trim(), line);
  if (read.ok) told.reading(read.raw);
  else told.bad(read.why);
}

/** Topic filters with + and # (MQTT 3.1.1, 4.7). */
export function fits(filter: string, topic: string): boolean {
  const [wanted, given] = [filter.split('/'), topic.split('/')];
  for (const [i, level] of wanted.entries()) {
    if (level === '#') return true;
    if (i >= given.length || (level !== '+' && level !== given[i])) return false;
  }
  return wanted.length === given.length;
}
