/** An entry of a record as a line for people. */
import { forecastLine } from '@hoopwright/wire/advice';
import type { Body, Entry, EntryKind, Json } from '@hoopwright/wire/record';

const WIDTH = 11;

export function entryText({ kind, body, wall_ms, seq }: Entry, began_ms: number): string {
  const seconds = Math.round((wall_ms - began_ms) / 1000);
  const two = (n: number): string => String(n).padStart(2, '0');
  const time = `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  return `${String(seq).padStart(5)}  ${time}  ${kind.padEnd(WIDTH)}${said(kind, body)}`;
}

function said(kind: EntryKind, body: Body): string {
  const text = (key: string): string => plain(body[key]);
  switch (kind) {
    case 'step':
      return `${text('step')}  ${text('kind')}  ${text('pressure_bar')} bar`;
    case 'reading':
    case 'correction':
      return `${kind === 'correction' ? `of entry ${text('corrects')}  ` : ''}${valuesOf(body)}`;
    case 'advice':
      return `${text('state').toUpperCase()}  ${text('says')}${reasonsOf(body)}${explainedOf(body)}`;
    case 'forecast':
      return forecastLine(body);
    case 'decision':
      return `${text('decision')}  (${text('by')})  ${text('why')}`;
    case 'remark':
      return `${text('text')}  (${text('by')})`;
    case 'trouble':
      return `${text('what')}${body['over'] === true ? ', over' : ''}  ${text('says')}`;
    case 'measure':
      return `${text('when')}  ${text('what')} ${text('place')}  ${text('value')} ${text('unit')}  (${text('by')}, ${text('with')})`;
    case 'photo':
      return `${text('place')}  ${text('bytes')} bytes  (${text('by')})  ${text('photo').slice(0, 16)}`;
    case 'gap':
      return `${text('cause')}, ${Number(body['parted_ms']) / 1000} s`;
    case 'end':
      return `${text('end')}  ${text('why')}`;
    case 'plan':
      return sealOf(body);
    default:
      return Object.keys(body).join(', ');
  }
}

function reasonsOf({ reasons }: Body): string {
  return Array.isArray(reasons) ? reasons.map(plain).join(' ') : '';
}

/** What may be behind an oddity, likeliest first, and the reading that would tell. */
function explainedOf({ explanations, tellApart }: Body): string {
  if (!Array.isArray(explanations) || explanations.length === 0) return '';
  const tell = tellApart === undefined ? '' : ` ${plain(tellApart)}`;
  return `  Likeliest first: ${explanations.map(plain).join(' ')}${tell}`;
}

function valuesOf(body: Body): string {
  const { values } = body;
  if (typeof values !== 'object' || values === null) return '';
  return Object.entries(values)
    .map(([name, value]) => `${name} ${plain(value)}`)
    .join('  ');
}

function sealOf({ frozen }: Body): string {
  if (typeof frozen !== 'object' || frozen === null || Array.isArray(frozen)) return '';
  const seal = Object.fromEntries(Object.entries(frozen));
  return `${plain(seal['name'])} ${plain(seal['revision'])} of ${plain(seal['date'])}, digest ${plain(seal['digest']).slice(0, 16)}`;
}

const plain = (value: Json | undefined): string =>
  value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value);
