import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { schemas, type ContentKind } from './schemas/index.ts';

/** The folder that holds `content/`: the project, unless a build is asked to make another book, as the scale benchmark does. */
const bookFolder = process.env['BOOK_FOLDER'] ?? '.';

/** One collection for each folder under `content/`; its schema is the one the checks use. */
function collectionOf<Kind extends ContentKind>(kind: Kind) {
  return defineCollection({
    loader: glob({ base: `${bookFolder}/content/${kind}`, pattern: '*.{yaml,md,mdx}' }),
    schema: schemas[kind],
  });
}

export const collections = {
  sources: collectionOf('sources'),
  quantities: collectionOf('quantities'),
  ranges: collectionOf('ranges'),
  procedures: collectionOf('procedures'),
  faults: collectionOf('faults'),
  codes: collectionOf('codes'),
  cautions: collectionOf('cautions'),
  parts: collectionOf('parts'),
  engines: collectionOf('engines'),
  calculators: collectionOf('calculators'),
  glossary: collectionOf('glossary'),
};
