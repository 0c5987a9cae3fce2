/** What a request carries through the server. */
import type { Token } from '@hoopwright/wire/project';
import type { Context } from 'hono';

export interface Env {
  readonly Bindings: {
    /** Node's own request; absent only where a test leaves it out, and then nobody is trusted. */
    readonly incoming?: { readonly socket?: { readonly remoteAddress?: string | undefined } };
  };
  readonly Variables: { who: Who };
}

export type Who =
  /** The laptop's own page: it needs no token. */
  | { readonly kind: 'own' }
  /** Somebody on the network with a link. */
  | { readonly kind: 'token'; readonly token: Token }
  | { readonly kind: 'nobody' };

export type Asked = Context<Env>;

export const remoteOf = (c: Asked): string | undefined => c.env?.incoming?.socket?.remoteAddress;

/** 127.0.0.0/8 and ::1 (RFC 1122, RFC 4291), also as IPv6 writes an IPv4 address. */
export const isLoopback = (address: string | undefined): boolean =>
  address !== undefined && /^(::1|(::ffff:)?127(\.\d{1,3}){3})$/i.test(address);
