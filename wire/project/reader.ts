/** From a shape to a strict reader that answers with the value or with issues. */
import * as z from 'zod';
import type { Issue } from '../issue/issue.ts';
import type { SchemaNode } from '../issue/schemaNode.ts';
import { structureIssues } from '../issue/structureIssues.ts';

export type Message<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/* @__NO_SIDE_EFFECTS__ */
export const reader = <T>(shape: z.ZodType<T>): ((value: unknown) => Message<T>) => {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- SchemaNode names the part of JSON Schema that is read
  const schema = z.toJSONSchema(shape) as SchemaNode;
  return (value) => {
    const { success, data, error } = shape.safeParse(value);
    return success
      ? { ok: true, value: data }
      : { ok: false, issues: structureIssues(error.issues, value, schema) };
  };
};
