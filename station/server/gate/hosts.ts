/** Under which names the server is reached: always the laptop's own, and those of the network where it is shared. */
import type { NetworkInterfaceInfo } from 'node:os';

const OWN_NAMES = ['localhost', '127.0.0.1', '[::1]'];

export interface Network {
  readonly hostname: string;
  readonly interfaces: Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;
}

export const isOwnHost = (host: string): boolean => OWN_NAMES.includes(host) || host === '::1';

/** Names of this machine in the network; none where `host` is the laptop's own. */
export const networkNames = (host: string, { hostname, interfaces }: Network): readonly string[] => {
  if (isOwnHost(host)) return [];
  if (host !== '0.0.0.0' && host !== '::') return [bracketed(host.toLowerCase())];
  const addresses = Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter(({ internal, scopeid }) => !internal && !scopeid)
    .map(({ address }) => bracketed(address));
  const name = hostname.toLowerCase();
  return [...addresses, name, ...(name.includes('.') ? [] : [`${name}.local`])];
};

const bracketed = (address: string): string => (address.includes(':') ? `[${address}]` : address);

/** Every Host header that is right; a browser leaves the port out where it is 80. */
export const hostsFor = (names: readonly string[], port: number): ReadonlySet<string> =>
  new Set(
    [...OWN_NAMES, ...names].flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`])),
  );
