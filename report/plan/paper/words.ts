/** Words of the papers: heads of columns, fields of the title block (ISO 7200). */

const ENGLISH = {
  project: 'Project',
  tank: 'Tank',
  serial: 'Serial',
  revision: 'Revision',
  page: 'Page',
  pageOf: '{page} of {last}',
  paper: 'Sheet',
  digest: 'Digest of the plan',
  units: 'Units',
  forecast: 'Forecast',
  none: '–',
  unnamed: '–',
  outOfDate: 'OUT OF DATE: make the plan again',
  invented: 'INVENTED DATA',
  change: '{girth} +{unit}',
  strokes: 'strokes',
  litres: '{unit} pumped',
  stop: 'STOP: pump off, read, release, on',
  foreseen: 'foreseen',
  time: 'time',
  temperature: 'water °C',
  initials: 'initials',
  notRead: 'not now',
  rate: '%/h',
  signature: 'signature',
  holds: 'Holds, and heads of the record',
  behind: 'What stands behind the card',
  headRule:
    'Head digest of the record, eight groups, copied from the screen and signed. It makes the paper a witness of the record.',
  headStart: 'start',
  headEnd: 'end',
  whoDirector: 'Director',
  whoPump: 'Pump',
  whoNotes: 'Notes',
  whoDate: 'Date, place',
} as const;

export type PaperWord = keyof typeof ENGLISH;

export const paperWord = (word: PaperWord): string => ENGLISH[word];
