/** `node tests/captures/writeExamples.ts` writes the invented logs and traces of `seeds/captures` anew, each with its truth beside it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { exampleFiles } from './model/examples.ts';

const folder = join(import.meta.dirname, '../../seeds/captures');
mkdirSync(folder, { recursive: true });
for (const { id, csv, yaml } of exampleFiles()) {
  writeFileSync(join(folder, `${id}.csv`), csv);
  writeFileSync(join(folder, `${id}.yaml`), yaml);
}
