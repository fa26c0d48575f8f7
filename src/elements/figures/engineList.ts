import { sameFigure } from '../../domain/figures/incoming.ts';
import { figureWords, markOf, placeWords } from '../../domain/figures/merge.ts';
import { figurePlaces } from '../../domain/figures/types.ts';
import type { FigurePlace, ShopEngine, ShopFigure } from '../../domain/figures/types.ts';
import type { SentenceOptions } from '../../domain/measurement/sentence.ts';
import { bookAddress, element } from '../dom.ts';
import type { ShopFigures } from './shopFigures.ts';

/** Called with the engine as it was, words for what goes, and what is to be left of it. */
export type RemoveFigures = (engine: ShopEngine, words: string, left: ShopEngine | undefined) => void;

/** Every engine with every figure of every place, each marked with whether it counts; what is kept in this browser can be removed. */
export function engineList(shop: ShopFigures, options: SentenceOptions, remove: RemoveFigures): HTMLElement {
  if (shop.engines.length === 0) return element('p', { class: 'lead' }, 'None yet. Enter the figures that the maker of an engine gives, as you meet them.');
  return element('ul', { class: 'meters' }, ...shop.engines.map(({ id, title, layout }) => engineItem(shop, id, title, layout, options, remove)));
}

function engineItem(shop: ShopFigures, id: string, title: string, layout: string | undefined, options: SentenceOptions, remove: RemoveFigures): HTMLElement {
  const own = shop.places.device?.find((engine) => engine.id === id);
  const laidOut = shop.book.layouts.find((one) => one.id === layout);
  const figures = figurePlaces.flatMap((place) => (shop.places[place]?.find((engine) => engine.id === id)?.figures ?? []).map((figure) => ({ place, figure })));
  const items = figures.map(({ place, figure }) => figureItem(shop, id, place, figure, options, place === 'device' && own ? () => remove(own, `“${titleOf(shop, figure)}”`, without(own, figure)) : undefined));
  const away = element('button', { type: 'button', 'aria-label': `Remove the engine: ${title}` }, 'Remove the engine');
  away.addEventListener('click', () => own && remove(own, `“${title}”`, undefined));
  return element(
    'li',
    {},
    element('h2', {}, title),
    laidOut ? element('p', {}, element('a', { href: bookAddress(`engines/${laidOut.id}/`) }, laidOut.title)) : undefined,
    element('ul', { class: 'engine-figures' }, ...items),
    own ? element('p', { class: 'actions' }, away) : undefined,
  );
}

function figureItem(shop: ShopFigures, engine: string, place: FigurePlace, figure: ShopFigure, options: SentenceOptions, remove: (() => void) | undefined): HTMLElement {
  const known = shop.book.ranges.some(({ id }) => id === figure.range);
  const title = titleOf(shop, figure);
  const counting = shop.engines.find(({ id }) => id === engine)?.figures.find(({ range }) => range === figure.range);
  const counts = counting !== undefined && counting.place === place && sameFigure(counting, figure);
  const why = counts ? '' : counting ? ' Does not count: another comes first.' : ' Does not count: this book has no such range, or the unit does not fit it.';
  const away = element('button', { type: 'button', class: 'plain', 'aria-label': `Remove the figure: ${title}` }, 'Remove');
  if (remove) away.addEventListener('click', remove);
  return element(
    'li',
    counts ? {} : { class: 'is-beaten' },
    known ? element('a', { href: bookAddress(`ranges/${figure.range}/`) }, title) : title,
    ': ',
    element('strong', {}, figureWords(figure, options)),
    `; ${markOf(figure)}, kept ${placeWords[place]}.${why} `,
    remove ? away : undefined,
  );
}

function titleOf(shop: ShopFigures, figure: ShopFigure): string {
  return shop.book.ranges.find(({ id }) => id === figure.range)?.title ?? figure.range;
}

function without(engine: ShopEngine, figure: ShopFigure): ShopEngine {
  return { ...engine, figures: engine.figures.filter((one) => !sameFigure(one, figure)) };
}
