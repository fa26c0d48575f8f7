import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { checkBook, formatCheck } from '../../checks/checkBook.ts';
import { formatFindings } from '../../checks/finding.ts';
import { formatRepairs, repairBook } from '../../checks/repairs.ts';
import { checkLayers } from '../layers.ts';
import { licenceFindings, lockedPackages } from '../licences.ts';

/**
 * `npm run check`: types, lint, layers and content, each to its end.
 * `npm run check -- --content [folder]`: the content alone; a folder that holds another `content` may be named.
 * `npm run check -- --audit`: known weaknesses of the packages besides, which needs the network.
 * `npm run check -- --fix [folder]`: makes the repairs that need no author, says which, and checks the content after them.
 */

export interface Part {
  readonly name: string;
  /** True when nothing is wrong; whatever is wrong has been printed. */
  readonly run: () => boolean;
}

const root = join(import.meta.dirname, '../../..');

/** Runs a tool of the project and shows what it says. */
function tool(name: string, words: readonly string[]): boolean {
  const command = join(root, 'node_modules/.bin', name);
  const { status, error } = spawnSync(command, words, { cwd: root, stdio: 'inherit' });
  if (error !== undefined) console.log(`${name} could not be started: ${error.message}`);
  return status === 0;
}

function hasTypeScript(folder: string): boolean {
  return readdirSync(join(root, folder), { recursive: true }).some((file) => String(file).endsWith('.ts'));
}

function checkContent(folder: string): boolean {
  const check = checkBook(folder);
  console.log(formatCheck(check));
  return check.findings.length === 0;
}

function fixContent(folder: string): boolean {
  console.log(`${formatRepairs(repairBook(folder, checkBook(folder).findings))}\n`);
  return checkContent(folder);
}

function checkRooms(): boolean {
  const findings = checkLayers(root);
  console.log(formatFindings(findings));
  return findings.length === 0;
}

function checkLicences(): boolean {
  const packages = lockedPackages();
  const findings = licenceFindings(packages);
  for (const { message } of findings) console.log(message);
  console.log(`${packages.length} packages, ${findings.length} with a licence that is not allowed.`);
  return findings.length === 0;
}

/** Asks the registry for known weaknesses of the packages. It needs the network, so it is done only when asked for. */
function audit(): boolean {
  return spawnSync('npm', ['audit'], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' }).status === 0;
}

export const parts: readonly Part[] = [
  { name: 'types of the domain', run: () => tool('tsc', ['-p', 'src/domain']) },
  ...(hasTypeScript('src/elements') ? [{ name: 'types of the elements', run: () => tool('tsc', ['-p', 'src/elements']) }] : []),
  { name: 'types of everything', run: () => tool('astro', ['check', '--minimumFailingSeverity', 'error']) },
  { name: 'lint', run: () => tool('eslint', ['--config', 'src/build/eslint.config.mjs', '.']) },
  { name: 'layers', run: checkRooms },
  { name: 'licences', run: checkLicences },
  { name: 'content', run: () => checkContent(root) },
];

/** Runs every part, also after one has failed, and says which did. */
function runAll(chosen: readonly Part[]): boolean {
  const results = chosen.map(({ name, run }) => {
    console.log(`\n== ${name}`);
    return { name, passed: run() };
  });
  const failed = results.filter(({ passed }) => !passed).map(({ name }) => name);
  console.log(failed.length === 0 ? '\nEverything checked is in order.' : `\nNot in order: ${failed.join(', ')}.`);
  return failed.length === 0;
}

/** The parts that the words on the command line ask for. */
function chosenParts(words: readonly string[]): readonly Part[] {
  const at = words.findIndex((word) => word === '--content' || word === '--fix');
  if (at === -1) return words.includes('--audit') ? [...parts, { name: 'known weaknesses', run: audit }] : parts;
  const folder = resolve(words[at + 1] ?? root);
  if (words[at] === '--fix') return [{ name: 'repairs, then content', run: () => fixContent(folder) }];
  return [{ name: 'content', run: () => checkContent(folder) }];
}

if (import.meta.main) process.exitCode = runAll(chosenParts(process.argv.slice(2))) ? 0 : 1;
