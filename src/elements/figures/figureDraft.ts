import { readDrafts, writeDrafts } from '../storage/drafts.ts';

const place = 'my-engines';

/** The fields of the form; what is half typed when the page is left stands there again. */
export const draftFields = ['engine', 'title', 'layout', 'search', 'range', 'unit', 'low', 'high', 'referenceTemperature', 'from', 'enteredBy'] as const;
export type DraftField = (typeof draftFields)[number];
export type FigureDraft = Readonly<Record<DraftField, string>>;

export function readFigureDraft(): FigureDraft {
  const kept = readDrafts(place);
  return Object.fromEntries(draftFields.map((name) => [name, kept.get(name) ?? ''])) as FigureDraft;
}

export function writeFigureDraft(draft: FigureDraft): void {
  writeDrafts(place, new Map(draftFields.map((name) => [name, draft[name]])));
}
