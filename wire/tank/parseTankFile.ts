/** A tank file, as text or as a value, to the tank and its duty, or to every issue that can be found. */
import type { FlowLaw } from '@hoopwright/core/steel';
import type { Duty, Tank } from '@hoopwright/core/tank';
import type { Issue } from '../issue/issue.ts';
import { readJson } from '../issue/jsonText.ts';
import type { SchemaNode } from '../issue/schemaNode.ts';
import { structureIssues } from '../issue/structureIssues.ts';
import { contradictions } from './check/contradictions.ts';
import { notesOf } from './notes.ts';
import { implausible, takenAsGiven } from './check/plausible.ts';
import { type TankFile, tankFile, tankFileSchema } from './format/tankFile.ts';
import { type FlowFrom, plateFlow } from './toSteel.ts';
import { toDuty, toTank } from './toTank.ts';

export type ParsedTank =
  | {
      readonly ok: true;
      /** As given, file units, nothing added: what is exported again. */
      readonly file: TankFile;
      readonly tank: Tank;
      /** Absent where the file states none. */
      readonly duty?: Duty;
      /** Stated or evaluated: rests on what somebody gave; else provisional, and a note says so. */
      readonly flowFrom: FlowFrom;
      /** What was assumed, and what the person should know; each a sentence. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export interface ParseOptions {
  /** Implausible values become notes instead of issues. */
  readonly asGiven?: boolean;
  /** Flow curve that the evidence of this file gave; used where the file states no `flow`. */
  readonly flow?: FlowLaw;
}

const SCHEMA = tankFileSchema() as SchemaNode;

/** Never throws for what is in the file. Text is read as JSON; anything else is taken as the value already read. */
export function parseTankFile(input: unknown, options: ParseOptions = {}): ParsedTank {
  if (typeof input !== 'string') return parseValue(input, options);
  const json = readJson(input);
  return json.ok ? parseValue(json.value, options) : json;
}

function parseValue(value: unknown, { asGiven = false, flow }: ParseOptions): ParsedTank {
  const odd = implausible(value);
  const checked = tankFile.safeParse(value);
  if (!checked.success) {
    const issues = structureIssues(checked.error.issues, value, SCHEMA);
    return { ok: false, issues: asGiven ? issues : [...issues, ...odd] };
  }
  const file = checked.data;
  const found = contradictions(file);
  const waved = [...odd, ...found.odd];
  const issues = asGiven ? found.wrong : [...found.wrong, ...waved];
  if (issues.length > 0) return { ok: false, issues };
  return accepted(file, waved, flow);
}

function accepted(file: TankFile, waved: readonly Issue[], evaluated: FlowLaw | undefined): ParsedTank {
  const plate = plateFlow(file.steel, evaluated);
  const duty = toDuty(file);
  return {
    ok: true,
    file,
    tank: toTank(file, plate.flow),
    ...(duty === undefined ? {} : { duty }),
    flowFrom: plate.from,
    notes: [...waved.map(takenAsGiven), ...notesOf(file, plate.from)],
  };
}
