/** Reads what a source file imports, however it says so, with a real parser. */
import { parseSync } from 'vite';

export interface Source {
  /** From the root of the clone, with forward slashes: `core/steel/flow.ts`. */
  readonly path: string;
  readonly text: string;
}

export interface Links {
  readonly path: string;
  /** As written, each once: static, dynamic and type imports, re-exports, `new URL('./x.ts', import.meta.url)`. */
  readonly specifiers: readonly string[];
  /** Dynamic imports whose target is computed, so that nobody can check it. */
  readonly computed: number;
  readonly hasDefaultExport: boolean;
  readonly lines: number;
}

type Node = Readonly<Record<string, unknown>>;

/** Throws where the file does not parse: a file that cannot be read must not pass as one without imports. */
export function linksOf({ path, text }: Source): Links {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path} does not parse: ${errors[0].message}`);
  const nodes = [...nodesBelow(program)];
  const targets = nodes.flatMap(targetOf);
  return {
    path,
    specifiers: [...new Set(targets.filter((target) => target !== undefined))],
    computed: targets.filter((target) => target === undefined).length,
    hasDefaultExport: nodes.some(isDefaultExport),
    lines: text.trimEnd().split('\n').length,
  };
}

function* nodesBelow(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const item of value) yield* nodesBelow(item);
  else if (isNode(value)) {
    yield value;
    for (const part of Object.values(value)) yield* nodesBelow(part);
  }
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

/** Nothing for a node that imports nothing; undefined for an import whose target is computed. */
function targetOf(node: Node): (string | undefined)[] {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSImportType':
      return [literal(node.source)];
    case 'ExportNamedDeclaration':
      return isNode(node.source) ? [literal(node.source)] : [];
    case 'TSExternalModuleReference':
      return [literal(node.expression)];
    case 'NewExpression':
      return isUrlBesideThisFile(node) ? [literal(argument(node, 0))] : [];
    case 'CallExpression':
      return isNode(node.callee) && node.callee.name === 'require' ? [literal(argument(node, 0))] : [];
    default:
      return [];
  }
}

function literal(node: unknown): string | undefined {
  if (!isNode(node)) return undefined;
  if (typeof node.value === 'string') return node.value;
  return node.type === 'TemplateLiteral' ? plainTemplate(node.quasis) : undefined;
}

/** A template without a hole in it is as good as a string. */
function plainTemplate(quasis: unknown): string | undefined {
  if (!Array.isArray(quasis) || quasis.length !== 1) return undefined;
  const [{ value }] = quasis;
  return isNode(value) && typeof value.cooked === 'string' ? value.cooked : undefined;
}

const argument = (node: Node, place: number): unknown =>
  Array.isArray(node.arguments) ? node.arguments[place] : undefined;

/** `new URL('./x.ts', import.meta.url)` is how a worker is named; other URLs, and computed ones, are no links. */
function isUrlBesideThisFile(node: Node): boolean {
  if (!isNode(node.callee) || node.callee.name !== 'URL' || !isNode(argument(node, 1))) return false;
  return /\.tsx?$/.test(literal(argument(node, 0)) ?? '');
}

function isDefaultExport(node: Node): boolean {
  if (node.type === 'ExportDefaultDeclaration') return true;
  return node.type === 'ExportSpecifier' && isNode(node.exported) && node.exported.name === 'default';
}
