import type { Book } from '../schemas/index.ts';
import { readDemoJobs } from './demoJobs.ts';
import { domainFacts } from './domainFacts.ts';
import type { DomainFacts } from './domainFacts.ts';
import { exceptions as ownExceptions } from './exceptions.ts';
import { formatFindings } from './finding.ts';
import type { Finding } from './finding.ts';
import { readBook } from './readBook.ts';
import type { ReadBook } from './readBook.ts';
import { rules as allRules } from './rules/index.ts';
import type { Rule, RuleContext, RuleException } from './rules/rule.ts';

export interface BookCheck {
  readonly book: Book;
  readonly findings: readonly Finding[];
  /** Rules that judge what is missing; they wait until every entry can be read. */
  readonly notRun: readonly string[];
}

export interface CheckOptions {
  readonly rules?: readonly Rule[];
  readonly exceptions?: readonly RuleException[];
  readonly facts?: DomainFacts;
}

function contextOf(read: ReadBook, facts: DomainFacts): RuleContext {
  const bodies = [...read.bodies].map(([address, text]) => [address, { text, firstLine: read.sources.get(address)?.bodyLine ?? 1 }] as const);
  return {
    ...facts,
    place(kind, id, path) {
      const source = read.sources.get(`${kind}/${id}`);
      return { file: source?.file ?? `content/${kind}/${id}`, line: source?.lineOf(path) ?? 1 };
    },
    has: (kind, id) => read.sources.has(`${kind}/${id}`),
    idsOf: (kind) => [...read.sources.keys()].filter((address) => address.startsWith(`${kind}/`)).map((address) => address.slice(kind.length + 1)),
    bodies: new Map(bodies),
  };
}

/** Leaves out the excepted findings, and reports the exceptions that excepted nothing. */
export function applyExceptions(findings: readonly Finding[], exceptions: readonly RuleException[], ran: readonly Rule[]): Finding[] {
  const covers = (exception: RuleException, finding: Finding): boolean => exception.rule === finding.rule && exception.file === finding.file;
  const kept = findings.filter((finding) => !exceptions.some((exception) => covers(exception, finding)));
  const needless = exceptions
    .filter((exception) => ran.some((rule) => rule.name === exception.rule))
    .filter((exception) => !findings.some((finding) => covers(exception, finding)));
  const reports = needless.map(({ rule, file, reason }) => ({
    file: 'src/checks/exceptions.ts',
    line: 1,
    field: `${rule}, ${file}`,
    found: `an exception that is no longer needed ("${reason}")`,
    expected: 'no exception: take it off the list',
    rule: 'exceptions',
  }));
  return [...kept, ...reports];
}

/** Reads the book under a folder, holds every rule against it, and the invented jobs beside it against the book. */
export function checkBook(root: string, options: CheckOptions = {}): BookCheck {
  const { rules = allRules, exceptions = ownExceptions, facts = domainFacts } = options;
  const read = readBook(root);
  const complete = read.findings.length === 0;
  const ran = rules.filter((rule) => complete || rule.scope === 'entry');
  const context = contextOf(read, facts);
  const broken = ran.flatMap((rule) => rule.check(read.book, context));
  // The invented jobs are held against the whole book; an entry that cannot be read would make them wrong for a reason of its own.
  const demoFindings = complete ? readDemoJobs(root, read.book).findings : [];
  return {
    book: read.book,
    findings: [...read.findings, ...applyExceptions(broken, exceptions, ran), ...demoFindings],
    notRun: rules.filter((rule) => !ran.includes(rule)).map((rule) => rule.name),
  };
}

/** The findings, why the broken rules matter, and which rules could not be held. */
export function formatCheck({ findings, notRun }: Pick<BookCheck, 'findings' | 'notRun'>, rules: readonly Rule[] = allRules): string {
  const broken = rules.filter((rule) => findings.some((finding) => finding.rule === rule.name));
  const parts = [formatFindings(findings)];
  if (broken.length > 0) parts.push(['Why it matters:', ...broken.map((rule) => `  ${rule.name}: ${rule.why}`)].join('\n'));
  if (notRun.length > 0) parts.push(`Not checked until every entry can be read: ${notRun.join(', ')}.`);
  return parts.join('\n\n');
}
