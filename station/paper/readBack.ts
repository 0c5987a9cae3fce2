/**
 * Reads the text of our own papers back out of their PDF, page by page, so that tests can hold paper to screen and
 * command line. Knows what our typesetter writes (ISO 32000-1: plain objects, flate streams, two-byte codes with a
 * ToUnicode map), and no more.
 */
import { inflateSync } from 'node:zlib';

/** Text of every page, lines and cells parted by blanks. Throws where the file is built otherwise than our papers are. */
export function pagesOf(pdf: Uint8Array): string[] {
  const file = new Objects(pdf);
  const catalogue = file.find(/\/Type\s*\/Catalog\b/);
  return kidsOf(file, reference(catalogue, 'Pages')).map((page) => pageText(file, page));
}

/** Objects of the file by their number. */
class Objects {
  readonly bytes: Buffer;
  readonly text: string;
  readonly starts = new Map<number, number>();

  constructor(pdf: Uint8Array) {
    this.bytes = Buffer.from(pdf);
    this.text = this.bytes.toString('latin1');
    for (const match of this.text.matchAll(/(?:^|\n)(\d+) 0 obj\b/g))
      this.starts.set(Number(match[1]), match.index + match[0].length);
  }

  /** Everything of an object before its stream. */
  dictionary(number: number): string {
    const start = this.starts.get(number);
    if (start === undefined) throw new Error(`the PDF has no object ${number}`);
    const end = /\bstream\r?\n|\bendobj\b/g;
    end.lastIndex = start;
    return this.text.slice(start, end.exec(this.text)?.index);
  }

  find(pattern: RegExp): string {
    for (const number of this.starts.keys()) {
      const found = this.dictionary(number);
      if (pattern.test(found)) return found;
    }
    throw new Error(`the PDF has no object ${pattern}`);
  }

  stream(number: number): string {
    const dictionary = this.dictionary(number);
    const start = this.text.indexOf('stream', (this.starts.get(number) ?? 0) + dictionary.length);
    const data = start + (this.text[start + 6] === '\r' ? 8 : 7);
    const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1]);
    const bytes = this.bytes.subarray(data, data + length);
    return (/FlateDecode/.test(dictionary) ? inflateSync(bytes) : bytes).toString('latin1');
  }
}

function reference(dictionary: string, key: string): number {
  const found = new RegExp(`/${key}\\s+(\\d+) 0 R`).exec(dictionary);
  if (found === null) throw new Error(`an object of the PDF has no /${key}`);
  return Number(found[1]);
}

/** Pages under a node of the tree, in their order. */
function kidsOf(file: Objects, node: number): number[] {
  const dictionary = file.dictionary(node);
  const kids = /\/Kids\s*\[([^\]]*)\]/.exec(dictionary);
  if (kids === null) return [node];
  return [...kids[1].matchAll(/(\d+) 0 R/g)].flatMap((kid) => kidsOf(file, Number(kid[1])));
}

function pageText(file: Objects, page: number): string {
  const dictionary = file.dictionary(page);
  const named = [...dictionary.matchAll(/\/(f\d+) (\d+) 0 R/g)];
  const fonts = new Map(named.map(([, name, font]) => [name, charactersOf(file, Number(font))]));
  const contents = file.stream(reference(dictionary, 'Contents'));
  return [...contents.matchAll(/BT\b([\s\S]*?)\bET\b/g)]
    .map(([, block]) => blockText(block, fonts))
    .join(' ');
}

type Characters = ReadonlyMap<number, string>;

/** Code to character, from the font's ToUnicode map. */
function charactersOf(file: Objects, font: number): Characters {
  const map = file.stream(reference(file.dictionary(font), 'ToUnicode'));
  const characters = new Map<number, string>();
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code, text] of block.matchAll(/<([0-9A-F]+)>\s*<([0-9A-F]+)>/gi))
      characters.set(Number.parseInt(code, 16), Buffer.from(text, 'hex').swap16().toString('utf16le'));
  return characters;
}

function blockText(block: string, fonts: ReadonlyMap<string, Characters>): string {
  const font = fonts.get(/\/(f\d+) [\d.]+ Tf/.exec(block)?.[1] ?? '');
  if (font === undefined) throw new Error('a text of the PDF names no font of its page');
  let text = '';
  for (const codes of codesIn(block)) {
    for (let i = 0; i + 1 < codes.length; i += 2) text += font.get(codes.readUInt16BE(i)) ?? '\uFFFD';
  }
  return text;
}

/** Strings of a block, literal ones with their balanced brackets, and hexadecimal ones. */
function* codesIn(block: string): Generator<Buffer> {
  for (let at = 0; at < block.length; at++) {
    if (block[at] === '<') {
      const end = block.indexOf('>', at);
      yield Buffer.from(block.slice(at + 1, end), 'hex');
      at = end;
    } else if (block[at] === '(') {
      const end = closing(block, at);
      yield Buffer.from(unescaped(block.slice(at + 1, end)), 'latin1');
      at = end;
    }
  }
}

/** Place of the bracket that closes the string opened at `from`. */
function closing(block: string, from: number): number {
  let depth = 0;
  for (let at = from; at < block.length; at++) {
    if (block[at] === '\\') at++;
    else if (block[at] === '(') depth++;
    else if (block[at] === ')' && --depth === 0) return at;
  }
  throw new Error('a string of the PDF is never closed');
}

const ESCAPES: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

const unescaped = (literal: string): string =>
  literal.replace(/\\(\d{1,3}|\r\n|[\s\S])/g, (_, code: string) =>
    /^\d/.test(code) ? String.fromCharCode(Number.parseInt(code, 8)) : (ESCAPES[code] ?? code.trim()),
  );
