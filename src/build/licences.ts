import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { listFiles } from './files.ts';
import { carried, ofTools } from './licences.data.ts';

const ROOT = join(import.meta.dirname, '../..');

/** What is in the book besides the packages that its scripts bundle. */
const BESIDE_BUNDLES = ['pagefind'];

export interface LicenceFinding {
  readonly name: string;
  readonly message: string;
}

interface Locked {
  readonly name: string;
  readonly version: string;
  readonly licence: string | undefined;
}

/** Every package of the lock file, for whatever machine, with the licence it declares. No network is asked. */
export function lockedPackages(root = ROOT): Locked[] {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    readonly packages: Readonly<Record<string, { readonly version?: string; readonly license?: string }>>;
  };
  return Object.entries(lock.packages)
    .filter(([path]) => path !== '')
    .map(([path, { version = '', license }]) => ({ name: path.replace(/^.*node_modules\//, ''), version, licence: license }));
}

/** Packages whose licence is missing or not among those allowed for a tool. */
export function licenceFindings(packages: readonly Locked[], allowed: ReadonlySet<string> = ofTools): LicenceFinding[] {
  return packages.flatMap(({ name, version, licence }) => {
    if (licence === undefined) return [{ name, message: `${name} ${version} declares no licence; read its own files, then take it out or name another.` }];
    if (isAllowed(licence, allowed)) return [];
    return [{ name, message: `${name} ${version} is under ${licence}; allowed are ${[...allowed].join(', ')}.` }];
  });
}

/** An SPDX expression of names with AND and OR, without brackets: all of one side of each OR must be allowed. */
function isAllowed(expression: string, allowed: ReadonlySet<string>): boolean {
  const plain = expression.replace(/^\((.*)\)$/, '$1');
  return plain.split(' OR ').some((side) => side.split(' AND ').every((name) => allowed.has(name)));
}

/**
 * The notices that others' licences ask to go along with the book, as one text.
 *
 * @param bundled packages whose code is in the book's scripts
 */
export function noticesOf(bundled: Iterable<string>, root = ROOT): string {
  const names = [...new Set([...bundled, ...BESIDE_BUNDLES])].sort();
  const locked = new Map(lockedPackages(root).map((one) => [one.name, one]));
  const used = names.map((name) => locked.get(name) ?? { name, version: '', licence: undefined });
  const findings = licenceFindings(used, carried);
  if (findings.length > 0) throw new Error(findings.map(({ message }) => message).join('\n'));
  const parts = used.map(({ name, version, licence }) => `${name} ${version} (${licence ?? ''})\n\n${licenceText(join(root, 'node_modules', name))}`);
  const own = `Ignition Bench Book (MIT)\n\n${licenceText(root)}`;
  return `${[own, ...parts].join(`\n\n${'-'.repeat(72)}\n\n`)}\n`;
}

function licenceText(folder: string): string {
  const found = existsSync(folder) ? readdirSync(folder).find((name) => /^licen[cs]e(?:\.|$)/i.test(name)) : undefined;
  if (found === undefined) throw new Error(`${folder} has no licence file, and its notice must go along with the book.`);
  const path = join(folder, found);
  // Some packages keep several in a folder.
  const files = statSync(path).isDirectory() ? listFiles(path).map((name) => join(path, name)) : [path];
  return files.map((file) => readFileSync(file, 'utf8').trim()).join('\n\n');
}
