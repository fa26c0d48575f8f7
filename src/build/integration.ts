import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroConfig, AstroIntegration, AstroIntegrationLogger } from 'astro';
import type { JobBook } from '../domain/jobs/book.ts';
import { checkBook, formatCheck, type BookCheck } from '../checks/checkBook.ts';
import { readDemoJobs } from '../checks/demoJobs.ts';
import { readBook } from '../checks/readBook.ts';
import { bundleElements, elementMiddleware } from './bundle.ts';
import { demoJob } from './demoJob.ts';
import { checkLinks, formatLinkFindings } from './checkLinks.ts';
import { contentFaultMiddleware, rememberedCheck, serveFaultsUntilRight } from './contentFaults.ts';
import { kilobytes } from './files.ts';
import { noticesOf } from './licences.ts';
import { writePortable } from './portable/writePortable.ts';
import { makeLinksRelative } from './relativeLinks.ts';
import { writeSearchIndex } from './searchIndex.ts';
import { writeServiceWorker } from './serviceWorker.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Everything that happens around the pages: content is checked before, and the built folder is finished after. */
export function benchBook(): AstroIntegration {
  const checked = rememberedCheck(process.env['BOOK_FOLDER'] ?? ROOT);
  return {
    name: 'bench-book',
    hooks: {
      // Before Astro reads the content, which would stop at the first fault.
      'astro:config:setup': async ({ command, config, isRestart, logger }) => {
        if (command === 'build') refuseFaultyContent();
        if (command === 'dev' && !isRestart) await waitForRightContent(checked, config.server, logger);
      },
      'astro:server:setup': ({ server }) => {
        server.middlewares.use(contentFaultMiddleware(checked));
        const answerScript = elementMiddleware();
        server.middlewares.use('/assets', (request, response, next) => void answerScript(request, response, next));
      },
      'astro:build:done': async ({ dir, logger }) => {
        await finishSite(fileURLToPath(dir), logger);
        await makePortable(fileURLToPath(dir), logger);
      },
    },
  };
}

function refuseFaultyContent(): void {
  const check = checkBook(process.env['BOOK_FOLDER'] ?? ROOT);
  if (check.findings.length > 0) throw new Error(`The content has faults.\n${formatCheck(check)}`);
}

/** Shows an author the faults, in the terminal and in the browser, until they are put right. */
async function waitForRightContent(checked: () => BookCheck, { port, host }: AstroConfig['server'], logger: AstroIntegrationLogger): Promise<void> {
  const check = checked();
  if (check.findings.length === 0) return;
  logger.error(`The content has faults; the book opens once they are put right.\n${formatCheck(check)}`);
  logger.info(`http://localhost:${port}/ lists them as they are now`);
  await serveFaultsUntilRight(checked, { port, host: typeof host === 'string' ? host : 'localhost' });
}

/** Turns Astro's output into the edition that is served. The order matters: what is stored offline comes last. */
async function finishSite(folder: string, logger: AstroIntegrationLogger): Promise<void> {
  const bundles = await bundleElements(folder);
  for (const { name, bytes } of bundles) logger.info(`script ${name}: ${kilobytes(bytes)} before compression`);
  writeFileSync(join(folder, 'licences.txt'), noticesOf(bundles.flatMap(({ packages }) => packages)));
  writeDemoJobs(folder);
  makeLinksRelative(folder);
  const search = await writeSearchIndex(folder);
  logger.info(`search: ${search.pages} pages, ${search.files} files, ${kilobytes(search.bytes)}`);
  const findings = checkLinks(folder);
  if (findings.length > 0) {
    throw new Error(`The built pages have ${findings.length} faults.\n${formatLinkFindings(findings)}`);
  }
  const build = await writeServiceWorker(folder, packageVersion());
  logger.info(`build ${build.buildId}: ${build.files} files, ${kilobytes(build.bytes)} kept on the device`);
}

/** The edition for a folder or a stick stands beside the site, made from it. */
async function makePortable(site: string, logger: AstroIntegrationLogger): Promise<void> {
  const { files, bytes, zipBytes } = await writePortable(site, join(site, '../portable'));
  logger.info(`portable edition: ${files} files, ${kilobytes(bytes)}; packed ${kilobytes(zipBytes)}`);
}

/** The invented jobs are worked out with the book's own numbers, so they are made once the book is there. */
function writeDemoJobs(folder: string): void {
  const root = process.env['BOOK_FOLDER'] ?? ROOT;
  const book = JSON.parse(readFileSync(join(folder, 'data/job-book.json'), 'utf8')) as JobBook;
  const { stories } = readDemoJobs(root, readBook(root).book);
  mkdirSync(join(folder, 'data/demo-jobs'), { recursive: true });
  for (const story of stories) writeFileSync(join(folder, `data/demo-jobs/${story.id}.json`), JSON.stringify(demoJob(story, book)));
  const items = stories.map(({ id, title, sentence }) => ({ id, title, sentence }));
  writeFileSync(join(folder, 'data/demo-jobs/index.json'), JSON.stringify({ items }));
}

function packageVersion(): string {
  const parsed: unknown = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const version = typeof parsed === 'object' && parsed !== null && 'version' in parsed ? parsed.version : undefined;
  if (typeof version !== 'string') throw new Error('package.json has no version.');
  return version;
}
