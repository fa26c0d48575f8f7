import { describe, expect, it } from 'vitest';
import { illustrationIds, illustrations } from '../../src/domain/drawing/registry.ts';
import type { Shape } from '../../src/domain/drawing/shape.ts';
import type { Illustration } from '../../src/domain/drawing/sketch.ts';
import { allShapes, cornersOf, overlap, pathCorners, viewBoxOf, wordBox, wordsIn } from './shapes.ts';

const pictures = illustrationIds.map((id) => ({ id, illustration: illustrations[id]() }));
const panels = pictures.flatMap(({ id, illustration }) => illustration.panels.map((panel, index) => ({ name: `${id}, panel ${index + 1}`, panel })));

/** Everything the caption says, in lower case. */
function captionOf({ title, note, points }: Illustration): string {
  return [title, note, ...points.flatMap(({ label, text }) => [label, text])].join(' | ').toLowerCase();
}

/** True when the words stand in the text whole, not as a part of longer words. */
function standsIn(label: string, text: string): boolean {
  const escaped = label.toLowerCase().replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\p{N}])${escaped}(?![\\p{L}\\p{N}])`, 'u').test(text);
}

function beyondEdge(panel: Shape): string[] {
  const edge = viewBoxOf(panel);
  return allShapes(panel).flatMap((shape) =>
    cornersOf(shape)
      .filter(({ x, y }) => !(x >= edge.left && x <= edge.right && y >= edge.top && y <= edge.bottom))
      .map(({ x, y }) => `${shape.tag} ${shape.text ?? ''} at ${x.toFixed(1)}, ${y.toFixed(1)}`),
  );
}

function collisions(panel: Shape): string[] {
  const words = wordsIn(panel);
  return words.flatMap((one, index) => words.slice(index + 1).filter((other) => overlap(wordBox(one), wordBox(other))).map((other) => `${one.text} / ${other.text}`));
}

describe('the rulers of these tests', () => {
  it('see words that collide, and words that do not', () => {
    const word = (x: number, text: string): Shape => ({ tag: 'text', attributes: { x, y: 20, class: 'drawn-words', 'text-anchor': 'start' }, text });
    const svg = (...children: Shape[]): Shape => ({ tag: 'svg', attributes: { viewBox: '0 0 100 40' }, children });
    expect(collisions(svg(word(0, 'earth'), word(20, 'supply')))).toEqual(['earth / supply']);
    expect(collisions(svg(word(0, 'earth'), word(50, 'supply')))).toEqual([]);
    expect(beyondEdge(svg(word(80, 'supply')))).toHaveLength(1);
  });

  it('follow a path, and refuse one they cannot read', () => {
    expect(pathCorners('M10 20h5v-5l1 1H3V4z')).toEqual([[10, 20], [15, 20], [15, 15], [16, 16], [3, 16], [3, 4], [10, 20]].map(([x, y]) => ({ x, y })));
    expect(pathCorners('M0 0S1 2 3 4')[0]?.x).toBeNaN();
  });

  it('find whole words only', () => {
    expect(standsIn('A', 'cylinder a runs')).toBe(true);
    expect(standsIn('A', 'the part')).toBe(false);
  });
});

describe.each(pictures)('$id', ({ illustration }) => {
  it('says in the caption every word that stands in the picture', () => {
    const caption = captionOf(illustration);
    const axes = ['voltage', 'current', 'time'];
    const labels = illustration.panels.flatMap((panel) => wordsIn(panel).map(({ text }) => text ?? ''));
    expect(labels.length).toBeGreaterThan(1);
    expect(labels.filter((label) => !standsIn(label, caption) && !axes.includes(label))).toEqual([]);
  });

  it('has a title without a stop, a note in sentences and points that end', () => {
    expect(illustration.title).toMatch(/^[A-Z].*[^.]$/);
    expect(illustration.note).toMatch(/\.$/);
    expect(illustration.points.length).toBeGreaterThan(1);
    expect(illustration.points.filter(({ text }) => !text.endsWith('.'))).toEqual([]);
  });

  it('carries class names and no colours of its own', () => {
    const shapes = illustration.panels.flatMap(allShapes);
    const own = shapes.flatMap(({ attributes }) => Object.keys(attributes)).filter((name) => ['fill', 'stroke', 'style', 'color'].includes(name));
    expect(own).toEqual([]);
  });
});

describe.each(panels)('$name', ({ panel }) => {
  it('is a picture with a title and ink', () => {
    expect(panel.tag).toBe('svg');
    expect(panel.attributes['role']).toBe('img');
    expect(panel.children?.[0]?.tag).toBe('title');
    expect(panel.children?.[0]?.text ?? '').toMatch(/\p{L}{3}/u);
    expect(allShapes(panel).filter(({ tag }) => ['path', 'polyline', 'rect', 'circle'].includes(tag)).length).toBeGreaterThan(3);
  });

  it('stays inside its view box', () => {
    expect(beyondEdge(panel)).toEqual([]);
  });

  it('keeps its words apart', () => {
    expect(collisions(panel)).toEqual([]);
  });

  it('is narrow enough to be read at 320 px', () => {
    // 320 px less the margins of the page leaves 288 px, and half of that less a gap for one of two panels.
    const { left, right } = viewBoxOf(panel);
    expect(right - left).toBeLessThanOrEqual(300);
  });
});
