import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import carried, { inflate } from '@sparticuz/chromium';
import { chromium, type Browser, type BrowserContext, type LaunchOptions } from 'playwright-core';

const MODULES = join(import.meta.dirname, '../../node_modules');
const PACKAGE = join(MODULES, '@sparticuz/chromium');

/** No quiet traffic and no first-run pages: a test must see what the book does and nothing else. */
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
  '--font-render-hinting=none',
];

/** Starts an installed Chromium when `chromium` is on the path, otherwise the one that comes with the npm packages. */
export async function launchBrowser(moreArguments: readonly string[] = []): Promise<Browser> {
  const options = await launchOptions();
  return await chromium.launch({ ...options, args: [...ARGUMENTS, ...moreArguments] });
}

/** A browser whose profile lies in `folder`, for tests that end it and look at what is left. */
export async function launchWithProfile(folder: string): Promise<BrowserContext> {
  return await chromium.launchPersistentContext(folder, await launchOptions());
}

async function launchOptions(): Promise<LaunchOptions> {
  const installed = onPath('chromium');
  if (installed !== undefined) return { executablePath: installed, args: ARGUMENTS };
  const folder = await unpackedBrowser();
  const executablePath = join(folder, 'chromium');
  return { executablePath, args: ARGUMENTS, env: environmentFor(executablePath, folder) };
}

function onPath(name: string): string | undefined {
  return (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));
}

/**
 * The package unpacks into the system's temporary folder under fixed names, where two test files that start together
 * would find each other's half-written browser. Here it is unpacked aside and renamed when it is whole.
 */
async function unpackedBrowser(): Promise<string> {
  const folder = join(MODULES, '.cache/carried-browser', packageVersion());
  if (existsSync(folder)) return folder;
  const partial = `${folder}-${process.pid}`;
  mkdirSync(partial, { recursive: true });
  await unpackInto(partial);
  try {
    renameSync(partial, folder);
  } catch (error) {
    rmSync(partial, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

async function unpackInto(folder: string): Promise<void> {
  const usual = process.env['TMPDIR'];
  process.env['TMPDIR'] = folder;
  try {
    await carried.executablePath(join(PACKAGE, 'bin'));
    await inflate(join(PACKAGE, 'bin/al2023.tar.br'));
  } finally {
    if (usual === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = usual;
  }
}

function packageVersion(): string {
  const parsed: unknown = JSON.parse(readFileSync(join(PACKAGE, 'package.json'), 'utf8'));
  return typeof parsed === 'object' && parsed !== null && 'version' in parsed ? String(parsed.version) : 'unknown';
}

/** The browser's own environment: the carried libraries and fonts stand in where the machine has none. */
function environmentFor(executablePath: string, folder: string): Record<string, string> {
  const environment = Object.fromEntries(
    Object.entries(process.env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );
  if (!starts(executablePath)) environment['LD_LIBRARY_PATH'] = join(folder, 'al2023/lib');
  if (!machineHasFonts()) environment['FONTCONFIG_FILE'] = carriedFontList(folder);
  return environment;
}

function starts(executablePath: string): boolean {
  try {
    execFileSync(executablePath, ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

function machineHasFonts(): boolean {
  const folders = ['/usr/share/fonts', '/usr/local/share/fonts', join(process.env['HOME'] ?? '/', '.fonts')];
  return (
    existsSync('/etc/fonts/fonts.conf') &&
    folders.some(
      (folder) => existsSync(folder) && readdirSync(folder, { recursive: true }).some((name) => /\.(?:ttf|otf|ttc)$/.test(String(name))),
    )
  );
}

function carriedFontList(folder: string): string {
  const path = join(folder, 'fonts.conf');
  const list = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${join(folder, 'fonts')}</dir><cachedir>${join(folder, 'fonts-cache')}</cachedir></fontconfig>
`;
  if (!existsSync(path)) writeFileSync(path, list);
  return path;
}
