/** A font from its web wrapping (WOFF 1.0, W3C Recommendation 2012) to the bare tables that a typesetter reads. */
import { inflateSync } from 'node:zlib';

const HEADER = 44;
const ENTRY = 20;

interface Table {
  readonly tag: number;
  readonly checksum: number;
  readonly bytes: Uint8Array;
}

/** Throws where the bytes are no WOFF 1.0. */
export function unwrapped(woff: Uint8Array): Uint8Array {
  const view = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.byteLength < HEADER || view.getUint32(0) !== 0x774f4646)
    throw new Error(`a WOFF font starts with wOFF, these ${woff.byteLength} bytes do not`);
  const flavour = view.getUint32(4);
  const tables = Array.from({ length: view.getUint16(12) }, (_, i) =>
    tableAt(woff, view, HEADER + i * ENTRY),
  );
  return assembled(flavour, tables);
}

function tableAt(woff: Uint8Array, view: DataView, at: number): Table {
  const offset = view.getUint32(at + 4);
  const packed = view.getUint32(at + 8);
  const whole = view.getUint32(at + 12);
  const bytes = woff.subarray(offset, offset + packed);
  return {
    tag: view.getUint32(at),
    checksum: view.getUint32(at + 16),
    bytes: packed < whole ? inflateSync(bytes) : bytes,
  };
}

/** Offset table, directory and tables of an sfnt, each table on a multiple of four (OpenType 1.9, "otff"). */
function assembled(flavour: number, tables: readonly Table[]): Uint8Array {
  const start = 12 + 16 * tables.length;
  const size = tables.reduce((sum, { bytes }) => sum + four(bytes.length), start);
  const font = new Uint8Array(size);
  const view = new DataView(font.buffer);
  const power = 2 ** Math.floor(Math.log2(tables.length));
  view.setUint32(0, flavour);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 * power);
  view.setUint16(8, Math.log2(power));
  view.setUint16(10, 16 * (tables.length - power));
  let at = start;
  tables.forEach(({ tag, checksum, bytes }, i) => {
    const entry = 12 + 16 * i;
    view.setUint32(entry, tag);
    view.setUint32(entry + 4, checksum);
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, bytes.length);
    font.set(bytes, at);
    at += four(bytes.length);
  });
  return font;
}

const four = (length: number): number => Math.ceil(length / 4) * 4;
