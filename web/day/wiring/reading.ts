/** What is typed in a field of the set-up, read; or in a sentence what came, what was wanted and what to do. */
import { readTyped } from '../../state/file/number.ts';
import { say } from '../../words/day/say.ts';

/** Sentences by the name of the field. */
export type Faults = Readonly<Record<string, string>>;

/** Guards the fields of one form while they are read: what is wrong is gathered, and reading goes on. */
export class FieldReader {
  readonly faults: Record<string, string> = {};
  private readonly fields: Readonly<Record<string, string>>;

  constructor(fields: Readonly<Record<string, string>>) {
    this.fields = fields;
  }

  fault(field: string, says: string): void {
    this.faults[field] ??= says;
  }

  text(field: string, wanted: string, fits: (text: string) => boolean = (text) => text !== ''): string {
    const text = (this.fields[field] ?? '').trim();
    if (!fits(text))
      this.fault(
        field,
        text === '' ? say('fieldEmpty', { wanted }) : say('fieldNot', { typed: text, wanted }),
      );
    return text;
  }

  /** Undefined: nothing is typed, or no number. */
  number(field: string, wanted: string, fits: (value: number) => boolean = () => true): number | undefined {
    const typed = (this.fields[field] ?? '').trim();
    const read = readTyped(typed);
    if (read.kind === 'number' && read.rest === '' && fits(read.value)) return read.value;
    if (read.kind === 'fault' && read.why === 'empty') return undefined;
    if (read.kind === 'asked') {
      const { fraction, thousands } = read;
      this.fault(field, say('rowAsked', { typed, fraction, thousands }));
    } else this.fault(field, say('fieldNot', { typed, wanted }));
    return undefined;
  }

  /** One that must be there. */
  needed(field: string, wanted: string, fits?: (value: number) => boolean): number {
    const value = this.number(field, wanted, fits);
    if (value === undefined) this.fault(field, say('fieldEmpty', { wanted }));
    return value ?? NaN;
  }

  whole(field: string, least: number, most: number): number {
    const wanted = say('wantedWhole', { least, most });
    return this.needed(field, wanted, (value) => Number.isInteger(value) && value >= least && value <= most);
  }

  /** Lines "what the instrument calls it = channel". */
  lines(field: string, wanted: string): readonly { readonly left: string; readonly right: string }[] {
    const lines = (this.fields[field] ?? '').split('\n').map((line) => line.trim());
    const filled = lines.filter((line) => line !== '');
    if (filled.length === 0) this.fault(field, say('fieldEmpty', { wanted }));
    return filled.flatMap((line) => {
      const at = line.lastIndexOf('=');
      const [left, right] = [line.slice(0, Math.max(at, 0)).trim(), line.slice(at + 1).trim()];
      if (at > 0 && left !== '' && right !== '') return [{ left, right }];
      this.fault(field, say('fieldNot', { typed: line, wanted }));
      return [];
    });
  }
}
