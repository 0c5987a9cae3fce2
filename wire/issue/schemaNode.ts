/** What a JSON Schema (draft 2020-12, as written by zod) allows at a place of the file. */

export interface SchemaNode {
  readonly type?: string;
  readonly description?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode;
  readonly oneOf?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly minItems?: number;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
}

/** Follows the path through schema and value together; a union is settled by the constants that the value meets. */
export function nodeAt(
  root: SchemaNode,
  path: readonly PropertyKey[],
  value: unknown,
): SchemaNode | undefined {
  let node: SchemaNode | undefined = settled(root, value);
  let here = value;
  for (const step of path) {
    here = entry(here, step);
    const next: SchemaNode | undefined =
      typeof step === 'number' ? node.items : own(node.properties, String(step));
    if (next === undefined) return undefined;
    node = settled(next, here);
  }
  return node;
}

/** Value at a path, undefined where the path leads nowhere. */
export const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown => path.reduce(entry, value);

function entry(value: unknown, step: PropertyKey): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- an object is asked for a key it has
  return (value as Readonly<Record<PropertyKey, unknown>>)[step];
}

const own = <T>(record: Readonly<Record<string, T>> | undefined, key: string): T | undefined =>
  record !== undefined && Object.hasOwn(record, key) ? record[key] : undefined;

function settled(node: SchemaNode, value: unknown): SchemaNode {
  const options = node.oneOf ?? node.anyOf;
  if (options === undefined) return node;
  return options.find((option) => meetsConstants(option, value)) ?? { ...node, properties: merged(options) };
}

function meetsConstants(option: SchemaNode, value: unknown): boolean {
  const constants = Object.entries(option.properties ?? {}).filter(
    ([, property]) => property.const !== undefined,
  );
  return constants.length > 0 && constants.every(([key, property]) => entry(value, key) === property.const);
}

/** No option is settled: every key of any of them, and all the words its telling key may have. */
function merged(options: readonly SchemaNode[]): Record<string, SchemaNode> {
  const all: Record<string, SchemaNode> = {};
  for (const option of options) {
    for (const [key, property] of Object.entries(option.properties ?? {})) {
      const words = [...(all[key]?.enum ?? []), property.const].filter((word) => word !== undefined);
      const { const: _one, ...rest } = property;
      all[key] = words.length === 0 ? property : { ...rest, enum: words };
    }
  }
  return all;
}

/** Places at which a key stands in the whole format, e.g. `ratio`: `heads.top (semi-ellipsoidal)`. */
export function homesOf(root: SchemaNode, key: string): readonly string[] {
  const homes: string[] = [];
  const visit = (node: SchemaNode, place: string): void => {
    for (const option of node.oneOf ?? node.anyOf ?? []) visit(option, `${place} (${nameOf(option)})`);
    if (node.items !== undefined) visit(node.items, `${place}[]`);
    for (const [name, property] of Object.entries(node.properties ?? {})) {
      if (name === key) homes.push(place === '' ? 'the top level' : place);
      visit(property, place === '' ? name : `${place}.${name}`);
    }
  };
  visit(root, '');
  return homes;
}

const nameOf = (option: SchemaNode): string =>
  String(
    // oxlint-disable-next-line typescript/no-base-to-string -- the schema is our own and holds words there
    Object.values(option.properties ?? {}).find((property) => property.const !== undefined)?.const ??
      'either',
  );
