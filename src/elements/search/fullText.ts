import { bookAddress } from '../dom.ts';
import { isPortable } from '../edition.ts';
import { wantScript } from '../wantedScript.ts';

/** The part of Pagefind's interface that is used here. */
interface Pagefind {
  options(options: Readonly<Record<string, unknown>>): Promise<void>;
  filters(): Promise<Readonly<Record<string, Readonly<Record<string, number>>>>>;
  search(query: string | null, options?: Readonly<Record<string, unknown>>): Promise<{ readonly results: readonly Result[] }>;
}

interface Result {
  readonly score: number;
  data(): Promise<Fragment>;
}

declare global {
  /** Left by the search's own script in the portable edition, which brings the whole index with it. */
  var ignitionBenchBookPagefind: Pagefind | undefined;
}

interface Fragment {
  /** From the root of the book: `/codes/p0303/`. */
  readonly raw_url: string;
  readonly excerpt: string;
  readonly content: string;
  readonly meta: Readonly<Record<string, string>>;
  readonly filters: Readonly<Record<string, readonly string[]>>;
}

export interface Hit {
  readonly title: string;
  readonly page: string;
  readonly part: string;
  /** Other words for it, as its page has them. */
  readonly names: readonly string[];
  /** How well the indexer holds it to fit; only to be compared. */
  readonly score: number;
  /** Text around the matched words; `matched` pieces are the words themselves. */
  readonly excerpt: readonly { readonly text: string; readonly matched: boolean }[];
  readonly content: string;
}

/** As many as fill the screen; each is a small file of its own the first time. */
const mostHits = 7;
/** What a page is called weighs more than what stands on it. */
const ranking = { metaWeights: { title: 10, names: 8, words: 12 } };
let loading: Promise<Pagefind> | undefined;

/** The index is fetched at the first search and not before. */
function load(): Promise<Pagefind> {
  loading ??= (async () => {
    const pagefind = isPortable() ? await fromScript() : ((await import(bookAddress('pagefind/pagefind.js'))) as Pagefind);
    await pagefind.options({ noWorker: true, excerptLength: 22, ranking, metaCacheTag: document.documentElement.dataset['build'] ?? 'book' });
    return pagefind;
  })();
  loading.catch(() => (loading = undefined));
  return loading;
}

async function fromScript(): Promise<Pagefind> {
  await wantScript('pagefind/pagefind.js');
  if (!globalThis.ignitionBenchBookPagefind) throw new Error('The search did not load.');
  return globalThis.ignitionBenchBookPagefind;
}

/** Parts of the book and how many pages each has. */
export async function partsOfBook(): Promise<Readonly<Record<string, number>>> {
  const pagefind = await load();
  return (await pagefind.filters())['part'] ?? {};
}

/** Pages with the words of the query, best first. An empty query with parts chosen lists those parts. */
export async function searchText(query: string, parts: readonly string[]): Promise<Hit[]> {
  const pagefind = await load();
  const filters = parts.length > 0 ? { part: { any: parts } } : {};
  const { results } = await pagefind.search(query === '' ? null : query, { filters });
  const shown = results.slice(0, query === '' ? 40 : mostHits);
  return Promise.all(shown.map(async (result) => toHit(await result.data(), result.score)));
}

function toHit(fragment: Fragment, score: number): Hit {
  return {
    title: fragment.meta['title'] ?? fragment.raw_url,
    page: bookAddress(fragment.raw_url.slice(1)),
    part: fragment.filters['part']?.[0] ?? 'Pages',
    names: fragment.meta['names']?.replace(/^Also called: |\.$/g, '').split(', ') ?? [],
    score,
    excerpt: splitExcerpt(fragment.excerpt),
    content: fragment.content,
  };
}

const entities: Readonly<Record<string, string>> = { '&lt;': '<', '&gt;': '>', '&amp;': '&', '&quot;': '"', '&#39;': "'" };

/** The excerpt comes as markup with `<mark>` round the words; it is taken apart as text, never handed to the page as markup. */
export function splitExcerpt(excerpt: string): { text: string; matched: boolean }[] {
  const pieces = excerpt.split(/<mark>(.*?)<\/mark>/s);
  return pieces
    .map((piece, index) => ({ text: piece.replace(/&(?:lt|gt|amp|quot|#39);/g, (entity) => entities[entity] ?? entity), matched: index % 2 === 1 }))
    .filter((piece) => piece.text !== '');
}
