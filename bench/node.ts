/** For the soaks of a running day: a node that sends lines by HTTP, and screens that listen, each in a process of its own. */

export const pause = (ms: number): Promise<void> => new Promise((resolve) => void setTimeout(resolve, ms));

/** Sends lines of NDJSON to the source "node" for as long as they come. */
export async function sendLines(
  port: string,
  record: string,
  lines: AsyncIterator<Uint8Array, never>,
): Promise<void> {
  const body = new ReadableStream<Uint8Array>({
    pull: async (out) => out.enqueue((await lines.next()).value),
  });
  const headers = { 'content-type': 'application/x-ndjson' };
  const url = `http://127.0.0.1:${port}/api/days/${record}/readings/node`;
  await fetch(url, { method: 'POST', body, headers, duplex: 'half' } as RequestInit);
}

/** So many screens follow the day. */
export async function listen(port: string, record: string, screens: number): Promise<void> {
  const one = async (): Promise<void> => {
    const answer = await fetch(`http://127.0.0.1:${port}/api/days/${record}/stream`);
    for await (const _ of answer.body ?? []);
  };
  await Promise.all(Array.from({ length: screens }, one));
}
