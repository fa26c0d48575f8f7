import type { MeterTexts, RangeTexts } from '../../domain/measurement/meterTexts.ts';
import { readDrafts, writeDrafts } from '../storage/drafts.ts';
import { emptyRange } from './meterEditor.ts';

const place = 'my-meters';

/** A meter half typed when the page was left: its id where it was being changed, and the words. */
export interface MeterDraft {
  readonly id: string;
  readonly texts: MeterTexts;
}

export function readMeterDraft(): MeterDraft | undefined {
  const kept = readDrafts(place);
  const id = kept.get('id');
  if (id === undefined) return undefined;
  const rows = Math.min(Number(kept.get('rows')) || 0, 100);
  const range = (index: number): RangeTexts => {
    const names = Object.keys(emptyRange).map((name) => [name, kept.get(`${index}.${name}`) ?? ''] as const);
    return { ...emptyRange, ...Object.fromEntries(names) };
  };
  return { id, texts: { name: kept.get('name') ?? '', ranges: Array.from({ length: rows }, (_, index) => range(index)) } };
}

export function writeMeterDraft(draft: MeterDraft | undefined): void {
  if (draft === undefined) return writeDrafts(place, new Map());
  const { id, texts } = draft;
  const ranges = texts.ranges.flatMap((range, index) => Object.entries(range).map(([name, text]) => [`${index}.${name}`, String(text)] as const));
  writeDrafts(place, new Map([['id', id], ['name', texts.name], ['rows', String(texts.ranges.length)], ...ranges]));
}
