import { spawn, type ChildProcess } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';

const SAMPLES = join(import.meta.dirname, '../../src/build/hosting');

export type ServerName = 'nginx' | 'apache';

/** The part of nginx that lists folders is a package of its own. */
const NGINX_LISTS = '/usr/lib/nginx/modules/ngx_http_dav_ext_module.so';

export interface HostOptions {
  /** A folder with a slash at its end: jobs are shared through it, as the sample says once its marks are taken away. */
  readonly sharedJobs?: string;
  /** The folder asks for a name and password, changed as the sample for Apache says: a line of a file of users. */
  readonly user?: string;
  /** The same port again, for a server that comes back. */
  readonly port?: number;
}

/** Can the server on this machine share jobs? */
export function canShare(name: ServerName): boolean {
  return programOf(name) !== undefined && existsSync(name === 'nginx' ? NGINX_LISTS : '/usr/lib/apache2/modules/mod_dav_fs.so');
}

export interface HostedBook {
  /** Address of the book, base path included. */
  readonly url: string;
  close(): Promise<void>;
}

/** The program of a server on this machine, or undefined where it is not installed. Systems keep it out of a user's path. */
export function programOf(name: ServerName): string | undefined {
  const names = { nginx: ['nginx'], apache: ['apache2'] }[name];
  const folders = [...(process.env['PATH'] ?? '').split(delimiter), '/usr/sbin', '/usr/local/sbin'];
  return folders.flatMap((folder) => names.map((program) => join(folder, program))).find((path) => existsSync(path));
}

/** Those of the servers that this machine has. */
export function installedServers(): readonly ServerName[] {
  return (['nginx', 'apache'] as const).filter((name) => programOf(name) !== undefined);
}

/** Serves a copy of a built folder with the sample configuration, on this machine alone, changed only where it asks to be. */
export async function hostBook(name: ServerName, site: string, base: string, options: HostOptions = {}): Promise<HostedBook> {
  const program = programOf(name);
  if (program === undefined) throw new Error(`${name} is not installed.`);
  const folder = mkdtempSync(join(tmpdir(), `${name}-`));
  // The server gives up its rights and must still be able to read.
  chmodSync(folder, 0o755);
  cpSync(site, join(folder, 'book'), { recursive: true });
  const port = options.port ?? (await freePort());
  const shared = options.sharedJobs ?? '';
  const plain = readFileSync(join(SAMPLES, `${name}.conf`), 'utf8');
  const sample = (shared === '' ? plain : plain.replaceAll(/^( *)#: /gm, '$1').replaceAll('/srv/bench-jobs/', shared))
    .replaceAll('/srv/ignition-bench-book/', `${folder}/book/`)
    .replaceAll('/tools/ignition/', base)
    .replace('listen 80;', `listen 127.0.0.1:${port};`);
  const { user } = options;
  if (user !== undefined) writeFileSync(join(folder, 'users'), `${user}\n`);
  writeFileSync(join(folder, 'sample.conf'), user === undefined ? sample : withPassword(sample, join(folder, 'users')));
  if (shared !== '') {
    mkdirSync(join(folder, 'lock'));
    for (const path of [join(folder, 'lock'), shared]) chmodSync(path, 0o777);
  }
  writeFileSync(join(folder, 'main.conf'), mainConfiguration[name](folder, port, shared !== ''));
  const words = name === 'nginx' ? ['-p', folder, '-c', join(folder, 'main.conf')] : ['-f', join(folder, 'main.conf'), '-D', 'FOREGROUND'];
  const server = spawn(program, words, { stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  server.stderr.on('data', (text) => (said += String(text)));
  const log = (): string => said + (existsSync(join(folder, 'error.log')) ? readFileSync(join(folder, 'error.log'), 'utf8') : '');
  const url = `http://127.0.0.1:${port}${base}`;
  await answers(url, server, log);
  return { url, close: () => stop(server, folder) };
}

/** In the part for shared jobs alone; the book itself stays open. */
function withPassword(sample: string, users: string): string {
  return sample.replace(/Dav On[\s\S]*?<\/Directory>/, (part) =>
    part.replaceAll('Require all granted', 'Require valid-user').replace('Dav On', `Dav On\n  AuthType Basic\n  AuthName "Jobs"\n  AuthUserFile ${users}`),
  );
}

/** What stands around the sample on a server that a distribution has set up. */
const mainConfiguration: Readonly<Record<ServerName, (folder: string, port: number, shares: boolean) => string>> = {
  nginx: (folder, _port, shares) => `${shares ? `load_module ${NGINX_LISTS};` : ''}
${process.getuid?.() === 0 ? 'user www-data;' : ''}
daemon off; pid ${folder}/pid; error_log stderr; worker_processes 1;
events {}
http {
  include /etc/nginx/mime.types;
  default_type application/octet-stream;
  access_log off;
  client_body_temp_path ${folder}/body; proxy_temp_path ${folder}/proxy; fastcgi_temp_path ${folder}/fastcgi;
  uwsgi_temp_path ${folder}/uwsgi; scgi_temp_path ${folder}/scgi;
  include ${folder}/sample.conf;
}
`,
  apache: (folder, port, shares) => `ServerRoot ${folder}
ServerName 127.0.0.1
Listen 127.0.0.1:${port}
PidFile ${folder}/pid
ErrorLog ${folder}/error.log
${process.getuid?.() === 0 ? 'User www-data\nGroup www-data' : ''}
${['mpm_event', 'authz_core', 'alias', 'dir', 'mime', 'env', 'setenvif', 'headers', 'filter', 'deflate', 'substitute', ...(shares ? ['dav', 'dav_fs', 'authn_core', 'auth_basic', 'authn_file', 'authz_user'] : [])]
  .map((one) => `LoadModule ${one}_module /usr/lib/apache2/modules/mod_${one}.so`)
  .join('\n')}
${shares ? `DavLockDB ${folder}/lock/DAVLock` : ''}
TypesConfig /etc/mime.types
<Directory />
  AllowOverride None
  Require all denied
</Directory>
Include ${folder}/sample.conf
`,
};

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

async function answers(url: string, server: ChildProcess, said: () => string): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (server.exitCode !== null) throw new Error(`The server ended: ${said()}`);
    const arrived = await fetch(url).then(
      () => true,
      () => false,
    );
    if (arrived) return;
    await setTimeout(50);
  }
  throw new Error(`The server does not answer: ${said()}`);
}

async function stop(server: ChildProcess, folder: string): Promise<void> {
  const ended = new Promise((resolve) => server.once('exit', resolve));
  server.kill('SIGTERM');
  await ended;
  rmSync(folder, { recursive: true, force: true });
}
