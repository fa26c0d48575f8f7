/**
 * `npm run -s simulate -- --policy <advice|fixed-order|swap-parts|optimal> --jobs N --seed S [--engine <id>] [--ignition <id>] [--wrong-weights F] [--small]`
 *
 * Draws cars with one fault each from the book's own weights, lets the policy find and cure it, and prints what that cost as JSON.
 * `optimal` is exact and solves small drawn models only; `--small` plays the advice on the same models.
 */
import process from 'node:process';
import { parseArgs } from 'node:util';
import { drawFor } from '../../domain/simulation/random.ts';
import { drawSmallModel } from '../../domain/simulation/drawSmallModel.ts';
import { meanOf, policyNames, simulate, withWrongWeights } from '../../domain/simulation/simulate.ts';
import type { Mean, PolicyName } from '../../domain/simulation/simulate.ts';
import { advicePolicy, followPolicy, optimalPolicy } from '../../domain/simulation/smallModel.ts';
import { commandEngine, readCommandBook } from './commandBook.ts';

const exitUsage = 64;
const usage =
  'npm run -s simulate -- --policy <advice|fixed-order|swap-parts|optimal> --jobs <1 to 100000> --seed <whole number> [--engine <id>] [--ignition <arrangement>] [--wrong-weights <factor>] [--small]';
const usualEngine = 'four-inline-1342';

interface Asked {
  readonly policy: string;
  readonly jobs: number;
  readonly seed: number;
  readonly engine: string;
  readonly ignition: string | undefined;
  readonly wrong: number;
  readonly small: boolean;
}

function readWords(words: readonly string[]): Asked | string {
  try {
    return readOptions(words);
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** Throws what `parseArgs` throws on an option that is not known. */
function readOptions(words: readonly string[]): Asked | string {
  const text = (standard: string) => ({ type: 'string', default: standard }) as const;
  const { values } = parseArgs({
    args: [...words],
    options: {
      policy: text('advice'),
      jobs: text('200'),
      seed: text('1'),
      engine: text(usualEngine),
      ignition: { type: 'string' },
      'wrong-weights': text('1'),
      small: { type: 'boolean', default: false },
    },
  });
  const asked = { ...values, jobs: Number(values.jobs), seed: Number(values.seed), wrong: Number(values['wrong-weights']), ignition: values.ignition };
  const problem = wordsProblem(asked);
  return problem ?? asked;
}

function wordsProblem({ policy, jobs, seed, wrong }: Asked): string | undefined {
  const known: readonly string[] = [...policyNames, 'optimal'];
  if (!known.includes(policy)) return `"${policy}" is no policy. Policies: ${known.join(', ')}`;
  if (!Number.isInteger(jobs) || jobs < 1 || jobs > 100_000) return '--jobs must be a whole number from 1 to 100000.';
  if (!Number.isInteger(seed)) return '--seed must be a whole number.';
  return wrong >= 1 ? undefined : '--wrong-weights must be a factor of 1 or more.';
}

/** Expectations over small drawn models, each exact; a repair on them stands for a finding. */
function smallModels({ policy, jobs, seed }: Asked): object {
  const played = Array.from({ length: jobs }, (_, number) => {
    const model = drawSmallModel(seed, number);
    return followPolicy(model, policy === 'optimal' ? optimalPolicy(model).policy : advicePolicy(model));
  });
  return {
    policy,
    jobs,
    seed,
    model: 'small',
    ...figure('meanMinutes', meanOf(played.map(({ minutes }) => minutes))),
    ...figure('meanNeedlessParts', meanOf(played.map(({ needlessParts }) => needlessParts))),
    ...figure('wrongFindingShare', meanOf(played.map(({ needlessParts, repairs }) => (repairs > 0 ? needlessParts / repairs : 0)))),
    ...figure('meanTests', meanOf(played.map(({ tests }) => tests))),
  };
}

function figure(name: string, { mean, interval }: Mean): Readonly<Record<string, unknown>> {
  return { [name]: mean, [`${name}Interval`]: interval };
}

function wholeBook(asked: Asked, policy: PolicyName): object | string {
  const read = readCommandBook();
  if (!read.ok) return read.error;
  const engine = commandEngine(read.value.book, asked.engine, asked.ignition);
  if (!engine.ok) return engine.error;
  const nature = read.value.diagnosis;
  const believed = asked.wrong === 1 ? nature : withWrongWeights(nature, asked.wrong, (fault) => drawFor(asked.seed, 'wrong', fault) < 0.5);
  const summary = simulate(policy, { book: nature, believed, engine: engine.value, seed: asked.seed, jobs: asked.jobs });
  return {
    policy,
    jobs: asked.jobs,
    seed: asked.seed,
    engine: asked.engine,
    ...figure('meanMinutes', summary.minutes),
    ...figure('meanWorkMinutes', summary.workMinutes),
    ...figure('meanNeedlessParts', summary.needlessParts),
    ...figure('wrongFindingShare', summary.wrongFindingShare),
    ...figure('meanTests', summary.tests),
    ...figure('repairedShare', summary.repairedShare),
  };
}

function main(words: readonly string[]): number {
  const asked = readWords(words);
  const complain = (message: string): number => {
    process.stderr.write(`${message}\n${usage}\n`);
    return exitUsage;
  };
  if (typeof asked === 'string') return complain(asked);
  const policy = policyNames.find((name) => name === asked.policy);
  if (asked.small && policy !== undefined && policy !== 'advice') return complain(`"${asked.policy}" is not played on small models; advice and optimal are.`);
  const result = policy === undefined || asked.small ? smallModels(asked) : wholeBook(asked, policy);
  if (typeof result === 'string') return complain(result);
  process.stdout.write(`${JSON.stringify(result, undefined, 2)}\n`);
  return 0;
}

process.exitCode = main(process.argv.slice(2));
