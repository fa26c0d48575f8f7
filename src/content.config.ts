import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { contentKinds, schemas, type ContentKind } from './schemas/index.ts';

/** One collection for each folder under `content/`; its schema is the one the checks use. */
function collectionOf(kind: ContentKind) {
  return defineCollection({
    loader: glob({ base: `./content/${kind}`, pattern: '*.{yaml,md,mdx}' }),
    schema: schemas[kind],
  });
}

export const collections = Object.fromEntries(contentKinds.map((kind) => [kind, collectionOf(kind)]));
