import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';
import ts from 'typescript';
import type { Finding } from '../checks/finding.ts';
import { builtInNames, impureNames, storageNames } from './layers.data.ts';
import type { ForbiddenName } from './layers.data.ts';

interface Room {
  /** Rooms it may import, beside itself. */
  readonly rooms: readonly string[];
  /** Packages it may import; `any` where the room is free to choose. */
  readonly packages: readonly RegExp[] | 'any';
  readonly why: string;
}

/** Who may import whom. Everything points down; nothing points up. `package.json` gives the version that pages and files show. */
export const rooms: Readonly<Record<string, Room>> = {
  domain: { rooms: [], packages: [], why: 'the domain is pure: it must run in a browser, on a command line and in a test without anything around it' },
  schemas: { rooms: ['domain'], packages: [/^zod$/], why: 'schemas say what authors may write; they know nothing of pages, files or commands' },
  elements: { rooms: ['domain'], packages: [/^idb$/, /^papaparse$/], why: 'browser code carries only the domain, so that every bundle stays small and works without a server' },
  checks: { rooms: ['schemas', 'domain'], packages: [/^yaml$/, /^zod$/, /^node:/], why: 'checks read the book without a site around it' },
  render: { rooms: ['schemas', 'domain', 'package.json'], packages: 'any', why: 'pages are drawn from the book alone; what the build or the browser does comes after' },
  pages: { rooms: ['render', 'schemas', 'domain', 'package.json'], packages: 'any', why: 'a page is a query and a layout; nothing else' },
  build: { rooms: ['checks', 'schemas', 'domain', 'package.json'], packages: 'any', why: 'the build works on the book and on the finished pages, not on their parts' },
  'content.config.ts': { rooms: ['schemas'], packages: [/^astro:/, /^astro\//], why: 'the collections are the schemas and nothing else' },
  content: { rooms: [], packages: [], why: 'content is data; it names entries by id and imports nothing' },
  seeds: { rooms: [], packages: [], why: 'seeds are data and import nothing' },
};

export interface ImportFound {
  readonly specifier: string;
  readonly line: number;
}

function lineAt(text: string, position: number): number {
  return text.slice(0, position).split('\n').length;
}

const blanked = (text: string): string => text.replace(/[^\n]/g, ' ');

/** Blanks out everything but the code of an Astro page, so that lines keep their numbers. */
function codeOfAstro(text: string): string {
  const blocks = text.matchAll(/^---\r?\n([\s\S]*?)\r?\n---|<script[^>]*>([\s\S]*?)<\/script>/dg);
  let code = '';
  for (const { indices } of blocks) {
    const [start, end] = indices?.[1] ?? indices?.[2] ?? [0, 0];
    code += blanked(text.slice(code.length, start)) + text.slice(start, end);
  }
  return code + blanked(text.slice(code.length));
}

/** Blanks out the fields and the code samples of a page of content: imports can only stand in its prose. */
function codeOfMdx(text: string): string {
  const prose = text.replace(/^---\r?\n[\s\S]*?\n---/, blanked).replace(/^```[\s\S]*?^```/gm, blanked);
  return prose.split('\n').map((line) => (/^(import|export)\b.*\bfrom\s*['"]|^import\s*['"]/.test(line) ? line : '')).join('\n');
}

function codeOf(file: string, text: string): string {
  if (file.endsWith('.astro')) return codeOfAstro(text);
  return /\.mdx?$/.test(file) ? codeOfMdx(text) : text;
}

/** Every import of a file: static, type-only, re-exported and dynamic. */
export function importsOf(file: string, text: string): ImportFound[] {
  const code = codeOf(file, text);
  return ts.preProcessFile(code, true, true).importedFiles.map(({ fileName, pos }) => ({ specifier: fileName, line: lineAt(code, pos) }));
}

/** The room of a file, by its path from the root of the project. */
function roomOf(file: string): string | undefined {
  const parts = file.split('/');
  return parts[0] === 'src' ? parts[1] : parts[0];
}

function targetRoom(file: string, specifier: string): string | undefined {
  if (!specifier.startsWith('.')) return undefined;
  return roomOf(posix.normalize(posix.join(posix.dirname(file), specifier)));
}

function importFinding(file: string, { specifier, line }: ImportFound): Finding | undefined {
  const name = roomOf(file) ?? '';
  const room = rooms[name];
  if (room === undefined) return undefined;
  const target = targetRoom(file, specifier);
  const isPackage = target === undefined;
  const allowed = isPackage
    ? room.packages === 'any' || room.packages.some((pattern) => pattern.test(specifier))
    : target === name || room.rooms.includes(target);
  if (allowed) return undefined;
  const accepted = room.rooms.length > 0 ? `imports from ${[name, ...room.rooms].join(', ')} only` : `no import from outside ${name}`;
  return { file, line, field: 'import', found: `"${specifier}"`, expected: `${accepted}: ${room.why}`, rule: 'layers' };
}

/** A name used as a value or type of its own, not as a property of something else. */
function standsAlone(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return ts.isIdentifier(parent.expression) && builtInNames.has(parent.expression.text);
  return !(ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent) || ts.isPropertyDeclaration(parent)) || parent.name !== node;
}

/** Names that a file gives to things of its own; they hide the global of the same name. */
function declaredIn(source: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    const declares = ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node) || ts.isFunctionDeclaration(node);
    if (declares && node.name !== undefined && ts.isIdentifier(node.name)) names.add(node.name.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return names;
}

function namesUsed(file: string, code: string): { name: string; position: number }[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS);
  const names: { name: string; position: number }[] = [];
  const visit = (node: ts.Node): void => {
    const position = node.getStart(source);
    if (ts.isPropertyAccessExpression(node)) names.push({ name: node.getText(source).replace(/\s+/g, ''), position });
    if (ts.isNewExpression(node) && (node.arguments?.length ?? 0) === 0) names.push({ name: `new ${node.expression.getText(source)}()`, position });
    if (ts.isIdentifier(node) && standsAlone(node)) names.push({ name: node.text, position });
    if (ts.isElementAccessExpression(node) && ts.isStringLiteral(node.argumentExpression)) names.push({ name: node.argumentExpression.text, position });
    ts.forEachChild(node, visit);
  };
  visit(source);
  const own = declaredIn(source);
  return names.filter(({ name }) => !own.has(name));
}

function nameFindings(file: string, text: string, forbidden: readonly ForbiddenName[]): Finding[] {
  const code = codeOf(file, text);
  return namesUsed(file, code).flatMap(({ name, position }) => {
    const rule = forbidden.find((entry) => entry.name === name);
    if (rule === undefined) return [];
    return [{ file, line: lineAt(code, position), field: 'name', found: name, expected: rule.expected, rule: 'layers' }];
  });
}

function forbiddenIn(file: string): readonly ForbiddenName[] {
  if (file.startsWith('src/domain/')) return impureNames;
  return file.startsWith('src/') && !file.startsWith('src/elements/storage/') && !file.startsWith('src/build/') ? storageNames : [];
}

/** What one file of source does that its room forbids. */
export function layerFindings(file: string, text: string): Finding[] {
  const imports = importsOf(file, text).flatMap((found) => importFinding(file, found) ?? []);
  const names = /\.(ts|mjs|astro)$/.test(file) ? nameFindings(file, text, forbiddenIn(file)) : [];
  return [...imports, ...names];
}

function filesUnder(root: string, folder: string): string[] {
  const items = readdirSync(join(root, folder), { withFileTypes: true, recursive: true });
  return items.filter((item) => item.isFile()).map((item) => relative(root, join(item.parentPath, item.name)).split(sep).join('/'));
}

/** Every file of source and content under the root of the project that can import something. */
export function sourceFiles(root: string): string[] {
  const folders = ['src', 'content', 'seeds'].filter((folder) => existsSync(join(root, folder)));
  const files = folders.flatMap((folder) => filesUnder(root, folder));
  return files.filter((file) => /\.(ts|mts|js|mjs|astro|mdx?)$/.test(file)).sort();
}

/** What the whole project does that its rooms forbid. */
export function checkLayers(root: string): Finding[] {
  return sourceFiles(root).flatMap((file) => layerFindings(file, readFileSync(join(root, file), 'utf8')));
}
