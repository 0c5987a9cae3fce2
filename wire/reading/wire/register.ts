/** Figures in Modbus registers: 16-bit words, big-endian within a word; the order of words is stated (Modbus V1.1b3, 4.2). */
import * as z from 'zod';

export const registerShape = z.strictObject({
  channel: z.string().min(1),
  table: z.enum(['holding', 'input']),
  /** Counted from 0, as on the wire. */
  address: z.int().min(0).max(65_535),
  as: z.enum(['int16', 'uint16', 'int32', 'uint32', 'float32']),
  /** Which of two words comes first. */
  words: z.enum(['high first', 'low first']).exactOptional(),
  /** Figure = register x scale + offset. */
  scale: z.number().exactOptional(),
  offset: z.number().exactOptional(),
});
export type Register = z.infer<typeof registerShape>;

export const wordsOf = ({ as }: Register): 1 | 2 => (as === 'int16' || as === 'uint16' ? 1 : 2);

/** Undefined: a floating-point pattern that is no number. */
export function fromWords(words: readonly number[], register: Register): number | undefined {
  const view = new DataView(new ArrayBuffer(4));
  const [first, second = 0] = register.words === 'low first' ? [words[1] ?? 0, words[0]] : words;
  view.setUint16(0, wordsOf(register) === 1 ? words[0] : first);
  view.setUint16(2, second);
  const value = valueIn(view, register.as);
  const { scale = 1, offset = 0 } = register;
  const figure = value * scale + offset;
  return Number.isFinite(figure) ? figure : undefined;
}

function valueIn(view: DataView, as: Register['as']): number {
  switch (as) {
    case 'int16':
      return view.getInt16(0);
    case 'uint16':
      return view.getUint16(0);
    case 'int32':
      return view.getInt32(0);
    case 'uint32':
      return view.getUint32(0);
    case 'float32':
      return view.getFloat32(0);
  }
}

/** Runs of neighbouring registers of one table, so that a poll asks once for each. */
export interface Span {
  readonly table: Register['table'];
  readonly from: number;
  readonly count: number;
  readonly registers: readonly Register[];
}

/** A run is no longer than one answer may be (125 words, Modbus V1.1b3, 6.3) and bridges no gap. */
const LONGEST_SPAN = 125;

export function spansOf(registers: readonly Register[]): Span[] {
  const sorted = [...registers].sort((a, b) => a.table.localeCompare(b.table) || a.address - b.address);
  const spans: Span[] = [];
  for (const register of sorted) {
    const last = spans.at(-1);
    const end = register.address + wordsOf(register);
    const goesOn = last?.table === register.table && register.address <= last.from + last.count;
    if (last === undefined || !goesOn || end - last.from > LONGEST_SPAN) {
      spans.push({
        table: register.table,
        from: register.address,
        count: wordsOf(register),
        registers: [register],
      });
    } else {
      const count = Math.max(last.count, end - last.from);
      spans[spans.length - 1] = { ...last, count, registers: [...last.registers, register] };
    }
  }
  return spans;
}
