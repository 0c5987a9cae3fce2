/** One wire: its fields, and beside each that cannot be taken the sentence that says why. */
import { useId } from 'react';
import { say } from '../../words/day/say.ts';
import type { Faults } from './reading.ts';
import { SOURCE_FIELDS, type TypedSource } from './typed.ts';

export interface SourceFormProps {
  readonly source: TypedSource;
  readonly faults: Faults;
  readonly onTyped: (source: TypedSource) => void;
  readonly onRemove: () => void;
}

const CHOICES: Readonly<Partial<Record<string, readonly (readonly [string, string])[]>>> = {
  decimal: [
    ['.', '.'],
    [',', ','],
  ],
  parity: [
    ['even', 'even'],
    ['none', 'none'],
    ['odd', 'odd'],
  ],
  form: [
    ['pairs', say('formPairs')],
    ['fields', say('formFields')],
    ['json', say('formJson')],
  ],
};
const SEPARATORS = [
  [';', ';'],
  [',', ','],
  ['\t', say('tab')],
] as const;
const LONG = new Set(['columns', 'names', 'topics', 'registers']);

export function SourceForm({ source, faults, onTyped, onRemove }: SourceFormProps) {
  const { kind, fields } = source;
  const name = fields['name'] ?? '';
  const title = `${say(`wire ${kind}`)}: ${name}`;
  const asked = Object.keys(SOURCE_FIELDS[kind]).filter((field) => isAsked(field, fields['form']));
  return (
    <fieldset className="wire" data-wire={kind}>
      <legend>{title}</legend>
      {asked.map((field) => (
        <SourceField
          key={field}
          source={source}
          field={field}
          fault={faults[field]}
          onTyped={(text) => onTyped({ kind, fields: { ...fields, [field]: text } })}
        />
      ))}
      {kind === 'http' ? <p className="quiet">{say('httpToken')}</p> : null}
      <button type="button" className="key" aria-label={say('wireRemoveNamed', { name })} onClick={onRemove}>
        {say('wireRemove')}
      </button>
    </fieldset>
  );
}

/** Fields of a serial line that its form has no use for are not asked for. */
const isAsked = (field: string, form: string | undefined): boolean =>
  form === undefined ||
  ((field !== 'separator' || form === 'fields') && (field !== 'decimal' || form !== 'json'));

interface SourceFieldProps {
  readonly source: TypedSource;
  readonly field: string;
  readonly fault: string | undefined;
  readonly onTyped: (text: string) => void;
}

function SourceField({ source: { kind, fields }, field, fault, onTyped }: SourceFieldProps) {
  const id = useId();
  const value = fields[field] ?? '';
  const choices = field === 'separator' && kind === 'csv' ? SEPARATORS : CHOICES[field];
  const given = {
    id,
    value,
    'aria-describedby': `${id}says`,
    'aria-invalid': fault !== undefined,
    onChange: (event: { readonly target: { readonly value: string } }) => onTyped(event.target.value),
  };
  const ordered = field === 'names' && fields['form'] === 'fields';
  return (
    <div className={`line-field${LONG.has(field) ? ' long' : ''}`} data-field={field}>
      <label htmlFor={id}>{ordered ? say('field order') : say(`field ${fieldNamed(field)}`)}</label>
      {choices !== undefined ? (
        <select {...given}>
          {choices.map(([one, text]) => (
            <option key={one} value={one}>
              {text}
            </option>
          ))}
        </select>
      ) : LONG.has(field) ? (
        <textarea rows={Math.max(2, value.split('\n').length)} spellCheck={false} {...given} />
      ) : (
        <input type="text" maxLength={500} autoComplete="off" spellCheck={false} {...given} />
      )}
      <span className="fault" id={`${id}says`}>
        {fault}
      </span>
    </div>
  );
}

const FIELDS = [
  'name',
  'file',
  'columns',
  'separator',
  'decimal',
  'every_ms',
  'path',
  'baud',
  'form',
  'names',
  'begins',
  'url',
  'topics',
  'host',
  'port',
  'unit',
  'parity',
  'registers',
] as const;
const fieldNamed = (field: string): (typeof FIELDS)[number] => FIELDS.find((one) => one === field) ?? 'name';
