/**
 * `npm run -s advise -- <job file> [--json]`: where a job stands, what is believed and what to do next. Reads the file as the job pages do.
 */
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { advise } from '../../domain/diagnosis/advice.ts';
import type { Advice, Proposal } from '../../domain/diagnosis/advice.ts';
import { judgeFinding } from '../../domain/diagnosis/finding.ts';
import { hypothesisLabel, perCent } from '../../domain/diagnosis/labels.ts';
import { importJob } from '../../domain/jobs/file.ts';
import { deriveJob } from '../../domain/jobs/reduce.ts';
import type { DerivedJob } from '../../domain/jobs/reduce.ts';
import { stageTitles } from '../../domain/jobs/types.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { readCommandBook } from './commandBook.ts';

const exitRefused = 2;
const exitUsage = 64;
const usage = 'npm run -s advise -- <job file> [--json]';

const shownBeliefs = 8;
const shownProposals = 5;

interface Answer {
  readonly job: Job;
  readonly derived: DerivedJob;
  readonly advice: Advice | undefined;
}

function answer(file: string): Answer | string {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch {
    return `${file} cannot be read. Give the path of a job file saved from the job page.`;
  }
  const job = importJob(text);
  if (!job.ok) return `${file}: ${job.error.message}`;
  const book = readCommandBook();
  if (!book.ok) return book.error;
  const derived = deriveJob(job.value.events, { diagnosis: book.value.diagnosis });
  const options = { ...derived.notPossible, open: derived.access };
  return { job: job.value, derived, advice: derived.diagnosis && advise(derived.diagnosis, options) };
}

function asJson({ job, derived, advice }: Answer) {
  const top = derived.beliefs[0];
  return {
    job: job.id,
    title: derived.title ?? job.title,
    stage: derived.stage,
    minutesSpent: derived.minutesSpent,
    minutesStillToCome: advice?.stillToCome,
    next: advice?.next,
    beliefs: derived.beliefs.slice(0, shownBeliefs).map(({ hypothesis, probability }) => ({ hypothesis: hypothesis.id, label: hypothesisLabel(hypothesis), probability })),
    finding: derived.diagnosis && top ? judgeFinding(derived.diagnosis, top.hypothesis.id) : undefined,
    proposals: advice?.proposals.slice(0, shownProposals).map((proposal) => ({ ...proposal, place: proposal.place.id, partner: proposal.partner?.id })) ?? [],
    notOffered: advice?.notOffered ?? [],
  };
}

function asText({ job, derived, advice }: Answer): string {
  const lines = [
    derived.title ?? job.title,
    `Stage: ${stageTitles[derived.stage]}. Spent so far: ${Math.round(derived.minutesSpent)} minutes.`,
  ];
  if (!advice) return [...lines, 'The engine is not known yet, so there is nothing to reason about.'].join('\n');
  lines.push(`Expected still to come: ${Math.round(advice.stillToCome)} minutes, parts at the shop's rate in them (an estimate).`, '', 'What it may be (estimates):');
  for (const { hypothesis, probability } of derived.beliefs.slice(0, shownBeliefs)) lines.push(`  ${perCent(probability).padStart(9)}  ${hypothesisLabel(hypothesis)}`);
  lines.push('', nextWords[advice.next]);
  advice.proposals.slice(0, shownProposals).forEach((proposal, index) => lines.push(...proposalLines(proposal, index)));
  return lines.join('\n');
}

const nextWords: Readonly<Record<Advice['next'], string>> = {
  test: 'Next: a test. In order:',
  finding: 'Next: the finding; belief and tests carry it. Tests that would still tell something:',
  nothing: 'Next: look beyond this book. Tests that would still tell something:',
};

function proposalLines({ title, place, partner, minutes, worthMinutes, because, lostTo }: Proposal, index: number): readonly string[] {
  const where = partner ? `${place.label} with ${partner.label}` : place.label;
  const worth = worthMinutes === undefined || worthMinutes < 1 ? '' : `, expected to save ${Math.round(worthMinutes)}`;
  return [`  ${index + 1}. ${title}, ${where}: ${minutes} minutes${worth}`, `     ${because}`, ...(lostTo === undefined ? [] : [`     ${lostTo}`])];
}

function main(words: readonly string[]): number {
  const files = words.filter((word) => word !== '--json');
  const [file] = files;
  if (file === undefined || files.length > 1 || file.startsWith('--')) {
    process.stderr.write(`${usage}\n`);
    return exitUsage;
  }
  const answered = answer(file);
  if (typeof answered === 'string') {
    process.stderr.write(`${answered}\n`);
    return exitRefused;
  }
  process.stdout.write(words.includes('--json') ? `${JSON.stringify(asJson(answered), undefined, 2)}\n` : `${asText(answered)}\n`);
  return 0;
}

process.exitCode = main(process.argv.slice(2));
