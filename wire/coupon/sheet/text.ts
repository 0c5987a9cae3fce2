/** Bytes of a text file to text: UTF-8, UTF-16 of either order with or without its mark, else Western European. */

export const textOf = (bytes: Uint8Array): string => {
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe) return fromUtf16(bytes.subarray(2), LITTLE);
  if (first === 0xfe && second === 0xff) return fromUtf16(bytes.subarray(2), BIG);
  if (first === 0xef && second === 0xbb && third === 0xbf)
    return fromUtf8(bytes.subarray(3)) ?? fromLatin(bytes);
  const order = unmarkedUtf16(bytes);
  if (order) return fromUtf16(bytes, order);
  return fromUtf8(bytes) ?? fromLatin(bytes);
};

/** Places of the low and the high byte in a pair. */
type Order = readonly [low: 0 | 1, high: 0 | 1];
const LITTLE: Order = [0, 1];
const BIG: Order = [1, 0];

/** Figures in UTF-16 have a zero in every other byte; no other text has zeros. */
const unmarkedUtf16 = (bytes: Uint8Array): Order | undefined => {
  const start = bytes.subarray(0, 200);
  const zeros = (parity: number): number => start.filter((byte, k) => byte === 0 && k % 2 === parity).length;
  if (zeros(1) > start.length / 4) return LITTLE;
  return zeros(0) > start.length / 4 ? BIG : undefined;
};

const fromUtf16 = (bytes: Uint8Array, [low, high]: Order): string => {
  const codes: number[] = [];
  for (let k = 0; k + 1 < bytes.length; k += 2) codes.push(bytes[k + low] + 256 * bytes[k + high]);
  return joined(codes, String.fromCharCode);
};

const fromLatin = (bytes: Uint8Array): string => joined([...bytes], String.fromCharCode);

/** Undefined where the bytes are not UTF-8. */
const fromUtf8 = (bytes: Uint8Array): string | undefined => {
  const points: number[] = [];
  for (let k = 0; k < bytes.length; ) {
    const lead = bytes[k];
    const more = lead < 0x80 ? 0 : lead >= 0xf0 ? 3 : lead >= 0xe0 ? 2 : 1;
    if (lead >= 0x80 && (lead < 0xc2 || lead > 0xf4)) return undefined;
    let point = more === 0 ? lead : lead & (0x3f >> more);
    for (let j = 1; j <= more; j++) {
      if ((bytes[k + j] & 0xc0) !== 0x80) return undefined;
      point = point * 64 + (bytes[k + j] & 0x3f);
    }
    if (point > 0x10ffff) return undefined;
    points.push(point);
    k += more + 1;
  }
  return joined(points, String.fromCodePoint);
};

/** In pieces: a function takes only so many arguments. */
const joined = (codes: readonly number[], write: (...codes: number[]) => string): string => {
  let text = '';
  for (let k = 0; k < codes.length; k += 8192) text += write(...codes.slice(k, k + 8192));
  return text;
};
