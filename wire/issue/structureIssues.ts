/** The findings of the structure check in the words of the trade: where, expected, received, what to do. */
import type { z } from 'zod';
import { type Issue, pathText, shown } from './issue.ts';
import { editDistance, nearest } from './nearest.ts';
import { homesOf, nodeAt, type SchemaNode, valueAt } from './schemaNode.ts';
import { numberSlip, unitSlip } from './unitSlip.ts';

type Finding = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

interface Draft extends Issue {
  /** Where the value that stands under a wrong key ought to stand; an issue that it is missing there says nothing new. */
  readonly meant?: string;
}

/**
 * @param findings what zod found in `input`
 * @param root JSON Schema of the same format
 * @returns one issue for each finding, and for each key that is unknown
 */
export function structureIssues(findings: readonly Finding[], input: unknown, root: SchemaNode): Issue[] {
  const drafts = findings.flatMap((finding) =>
    finding.code === 'unrecognized_keys'
      ? finding.keys.map((key) => unknownKey(finding.path, key, input, root))
      : [wrongValue(finding, input, root)],
  );
  const meant = new Set(drafts.map((draft) => draft.meant));
  const missing = (draft: Draft) => draft.received === 'nothing';
  return drafts
    .filter((draft) => !(missing(draft) && meant.has(draft.path)))
    .map(({ path, expected, received, suggestion }) => ({
      path,
      expected,
      received,
      ...(suggestion === undefined ? {} : { suggestion }),
    }));
}

function unknownKey(place: Path, key: string, input: unknown, root: SchemaNode): Draft {
  const allowed = Object.keys(nodeAt(root, place, input)?.properties ?? {});
  const here = valueAt(input, place);
  const free = allowed.filter((name) => valueAt(here, [name]) === undefined);
  const { meant, suggestion } = keyMeant(key, valueAt(here, [key]), { allowed, free, root });
  return {
    path: pathText([...place, key]),
    expected: `one of the keys ${allowed.join(', ')}`,
    received: shown(key),
    suggestion,
    ...(meant === undefined ? {} : { meant: pathText([...place, meant]) }),
  };
}

interface Keys {
  readonly allowed: readonly string[];
  /** Those of them that are not there yet. */
  readonly free: readonly string[];
  readonly root: SchemaNode;
}

function keyMeant(
  key: string,
  value: unknown,
  { allowed, free, root }: Keys,
): { meant?: string; suggestion: string } {
  const slip = unitSlip(key, value, free);
  if (slip !== undefined) {
    const says = slip.says === undefined ? '' : ` ${slip.says}`;
    return { meant: slip.meant, suggestion: `did you mean ${slip.meant}?${says}` };
  }
  const close = slipped(key, free) ?? partOf(key, free);
  if (close !== undefined) return { meant: close, suggestion: `did you mean ${close}?` };
  const homes = homesOf(root, key);
  if (homes.length > 0) return { suggestion: `${key} belongs to ${homes.slice(0, 3).join(' or ')}` };
  const word = nearest(key, free);
  if (word !== undefined) return { meant: word, suggestion: `did you mean ${word}?` };
  const there = unitSlip(key, value, allowed)?.meant ?? nearest(key, allowed);
  if (there !== undefined)
    return { suggestion: `did you mean ${there}? It is there already; take ${key} out` };
  return { suggestion: 'there is no such key here; take it out, or put the remark into a note' };
}

/** A key within one slip of the finger. */
const slipped = (key: string, keys: readonly string[]): string | undefined =>
  keys.find(
    (name) => key.length > 1 && key.length < 60 && editDistance(key.toLowerCase(), name.toLowerCase()) <= 1,
  );

/** `diameter_mm` is most of `insideDiameter_mm`. */
const partOf = (key: string, keys: readonly string[]): string | undefined =>
  keys.find((name) => key.length >= 4 && name.toLowerCase().includes(key.toLowerCase()));

function wrongValue(finding: Finding, input: unknown, root: SchemaNode): Draft {
  const value = valueAt(input, finding.path);
  const node = nodeAt(root, finding.path, input);
  const suggestion =
    valueMeant(value, finding.path, node) ?? `give ${node === undefined ? 'another' : kindText(node)}`;
  return {
    path: pathText(finding.path),
    expected: node === undefined ? finding.message : expectedText(node),
    received: shown(value),
    suggestion,
  };
}

function valueMeant(value: unknown, path: Path, node: SchemaNode | undefined): string | undefined {
  const key = path.findLast((step) => typeof step === 'string') ?? '';
  if (value === undefined) return path.length === 0 ? undefined : `give ${key}`;
  if (value === null) return 'null is no value; give one, or leave the key out';
  if (node?.type === 'number' && typeof value === 'string') return numberSlip(value, key);
  if (node?.type === 'number' && Array.isArray(value)) return 'give one number, not a list';
  if (node?.type !== 'array' && Array.isArray(value)) return 'take it out of its list';
  if (node?.type === 'array' && !Array.isArray(value)) return 'put it into a list: [ … ]';
  if (node?.const !== undefined) return `write ${JSON.stringify(node.const)}`;
  const words = (node?.enum ?? []).map(String);
  if (words.length === 0) return undefined;
  const word = typeof value === 'string' ? (nearest(value, words) ?? related(value, words)) : undefined;
  return word === undefined ? `give ${words.map(shown).join(' or ')}` : `did you mean ${shown(word)}?`;
}

/** "elliptical" is far from "semi-ellipsoidal" by letters and near by its first ones. */
const related = (value: string, words: readonly string[]): string | undefined =>
  words.find((word) => value.length >= 4 && word.includes(value.toLowerCase().slice(0, 4)));

/** What the schema wants, in words. */
export function expectedText(node: SchemaNode): string {
  const meaning = node.description?.replace(/\. Plausible: .*$/s, '');
  const kind = kindText(node);
  return meaning === undefined ? kind : `${kind} (${meaning})`;
}

function kindText(node: SchemaNode): string {
  if (node.const !== undefined) return JSON.stringify(node.const);
  if (node.enum !== undefined) return `one of ${node.enum.map((word) => JSON.stringify(word)).join(', ')}`;
  if (node.type === 'number') return numberText(node);
  if (node.type === 'array')
    return node.minItems === undefined ? 'a list' : `a list of ${node.minItems} or more`;
  if (node.type === 'string') return 'some text';
  const required = node.required ?? [];
  return required.length === 0 ? 'an object' : `an object with ${required.join(', ')}`;
}

function numberText({ exclusiveMinimum, minimum }: SchemaNode): string {
  if (exclusiveMinimum !== undefined) return `a number over ${exclusiveMinimum}`;
  return minimum === undefined ? 'a number' : `a number, ${minimum} or more`;
}
