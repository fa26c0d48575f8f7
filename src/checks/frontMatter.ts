/** A page cut into the fields between its two `---` lines and the prose after them. */
export interface FrontMatter {
  readonly fields: string;
  /** Line of the file on which the fields start. */
  readonly fieldsLine: number;
  readonly body: string;
  readonly bodyLine: number;
}

/** Undefined when the text does not open with fields between two `---` lines. */
export function splitFrontMatter(text: string): FrontMatter | undefined {
  const lines = text.split(/\r?\n/);
  if (lines[0]?.trimEnd() !== '---') return undefined;
  const end = lines.findIndex((line, index) => index > 0 && line.trimEnd() === '---');
  if (end === -1) return undefined;
  return {
    fields: lines.slice(1, end).join('\n'),
    fieldsLine: 2,
    body: lines.slice(end + 1).join('\n'),
    bodyLine: end + 2,
  };
}
