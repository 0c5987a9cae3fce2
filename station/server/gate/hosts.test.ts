import { describe, expect, it } from 'vitest';
import { hostsFor, networkNames } from './hosts.ts';

const info = (address: string, internal: boolean, scopeid = 0) => ({
  address,
  internal,
  ...(address.includes(':') ? ({ family: 'IPv6', scopeid } as const) : ({ family: 'IPv4' } as const)),
  netmask: '',
  mac: '',
  cidr: null,
});
const network = {
  hostname: 'Tern-Hill',
  interfaces: {
    lo: [info('127.0.0.1', true), info('::1', true)],
    wlan: [info('192.0.2.7', false), info('fe80::5', false, 3), info('2001:db8::7', false)],
  },
};

describe('the names of the server', () => {
  it("are the laptop's own where it is not shared", () => {
    expect(networkNames('127.0.0.1', network)).toEqual([]);
    expect([...hostsFor([], 8417)]).toEqual(['localhost:8417', '127.0.0.1:8417', '[::1]:8417']);
  });

  it('are those of the network too where it is shared', () => {
    expect(networkNames('0.0.0.0', network)).toEqual([
      '192.0.2.7',
      '[2001:db8::7]',
      'tern-hill',
      'tern-hill.local',
    ]);
    expect(networkNames('192.0.2.7', network)).toEqual(['192.0.2.7']);
    expect(hostsFor(['192.0.2.7'], 8417).has('192.0.2.7:8417')).toBe(true);
  });

  it('stand without their port at port 80, as browsers leave it out', () => {
    expect(hostsFor([], 80).has('localhost')).toBe(true);
    expect(hostsFor([], 8417).has('localhost')).toBe(false);
  });
});
