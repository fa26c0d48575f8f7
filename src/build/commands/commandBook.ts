import { join } from 'node:path';
import { formatFindings } from '../../checks/finding.ts';
import { readBook } from '../../checks/readBook.ts';
import { makeLayout } from '../../domain/diagnosis/layout.ts';
import type { DiagnosisBook, EngineLayout, IgnitionArrangement, InjectionArrangement } from '../../domain/diagnosis/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { diagnosisBook } from '../../schemas/diagnosisBook.ts';
import type { Book } from '../../schemas/index.ts';

const root = join(import.meta.dirname, '../../..');

/** What commands need of the book, read from `content`; or what is wrong with it. */
export function readCommandBook(folder: string = root): Result<{ readonly book: Book; readonly diagnosis: DiagnosisBook }, string> {
  const { book, findings } = readBook(folder);
  if (findings.length > 0) return failure(`The content is not in order:\n${formatFindings(findings)}`);
  return success({ book, diagnosis: diagnosisBook(book) });
}

/** An engine of the book with the arrangements named, or its first ones. */
export function commandEngine(book: Book, id: string, ignition?: string, injection?: string): Result<EngineLayout, string> {
  const engine = book.engines.get(id);
  if (engine === undefined) return failure(`"${id}" is no engine of the book. Engines: ${[...book.engines.keys()].join(', ')}`);
  const spark = chosen<IgnitionArrangement>('ignition', engine.ignition, ignition);
  if (!spark.ok) return spark;
  const fuel = chosen<InjectionArrangement>('injection', engine.injection, injection);
  if (!fuel.ok) return fuel;
  const layout = makeLayout({ ...engine, id }, spark.value, fuel.value);
  return layout.ok ? layout : failure(layout.error.message);
}

function chosen<Arrangement extends string>(name: string, known: readonly Arrangement[], asked: string | undefined): Result<Arrangement, string> {
  const found = asked === undefined ? known[0] : known.find((one) => one === asked);
  return found === undefined ? failure(`This engine has no ${name} "${asked ?? ''}". It has: ${known.join(', ')}`) : success(found);
}
