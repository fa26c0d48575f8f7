import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Finding, Repair } from '../../src/checks/finding.ts';
import { formatRepairs, repairText } from '../../src/checks/repairs.ts';

function finding(path: Repair['path'], change: Repair['change']): Finding {
  return { file: 'content/glossary/coil.yaml', line: 1, field: path.join(' › '), found: 'this', expected: 'that', rule: 'trial', repair: { path, change } };
}

function repaired(text: string, ...findings: Finding[]): string {
  return repairText('content/glossary/coil.yaml', text, findings).text;
}

const stop = (path: Repair['path']): Finding => finding(path, 'add-stop');
const takeOut = (position: number): Finding => finding(['otherWords', position], 'take-out-entry');

describe('a full stop', () => {
  it.each<readonly [label: string, before: string, after: string]>([
    ['bare text', 'meaning: It sparks\nsee: [a]\n', 'meaning: It sparks.\nsee: [a]\n'],
    ['bare text with a comment after it', 'meaning: It sparks # so\n', 'meaning: It sparks. # so\n'],
    ['bare text on two lines', 'meaning: It\n  sparks\n', 'meaning: It\n  sparks.\n'],
    ['text at the end of a file without a last line break', 'meaning: It sparks', 'meaning: It sparks.'],
    ['quoted once', "meaning: 'It''s: hot'\n", "meaning: 'It''s: hot.'\n"],
    ['quoted twice', 'meaning: "It \\"sparks\\""\n', 'meaning: "It \\"sparks\\"."\n'],
  ])('goes to the end of %s', (_label, before, after) => {
    expect(repaired(before, stop(['meaning']))).toBe(after);
    expect(parse(after)).toMatchObject({ meaning: `${(parse(before) as { meaning: string }).meaning}.` });
  });

  it('reaches into lists and groups', () => {
    const before = 'steps:\n  - text: Pull it\n    caution: hot\n  - { text: Push it, caution: hot }\n';
    const after = 'steps:\n  - text: Pull it.\n    caution: hot\n  - { text: Push it., caution: hot }\n';
    expect(repaired(before, stop(['steps', 0, 'text']), stop(['steps', 1, 'text']))).toBe(after);
  });

  it('leaves a block of text to its author, and says so', () => {
    const before = 'meaning: >\n  It sparks\n';
    const { text, reports } = repairText('content/glossary/coil.yaml', before, [stop(['meaning'])]);
    expect(text).toBe(before);
    expect(formatRepairs(reports)).toBe('content/glossary/coil.yaml:1  meaning: left as it is, mend it by hand');
  });

  it('changes nothing but the one text, whatever the text', () => {
    const anyText = fc.string({ minLength: 1 }).map((text) => text.trim()).filter((text) => text !== '');
    fc.assert(
      fc.property(anyText, anyText, (first, second) => {
        const before = `# kept\nterm: ${JSON.stringify(first)}\nmeaning: ${JSON.stringify(second)}\n`;
        expect(parse(repaired(before, stop(['meaning'])))).toEqual({ term: first, meaning: `${second}.` });
      }),
    );
  });
});

describe('an entry given twice', () => {
  it.each<readonly [label: string, before: string, after: string]>([
    ['in the middle of a line', 'otherWords: [a, A, b]\n', 'otherWords: [a, b]\n'],
    ['at the end of a line', "otherWords: [b, 'A']\n", 'otherWords: [b]\n'],
    ['over two lines', 'otherWords: [a,\n  A, b]\n', 'otherWords: [a, b]\n'],
    ['on a line of its own', 'otherWords:\n  - a\n  - A\n  - b\nterm: c\n', 'otherWords:\n  - a\n  - b\nterm: c\n'],
  ])('is taken out %s', (_label, before, after) => {
    expect(repaired(before, takeOut(1))).toBe(after);
  });

  it('is taken out together with others and a missing stop', () => {
    const before = 'otherWords: [a, A, b, B]\nmeaning: It sparks\n';
    expect(repaired(before, takeOut(1), stop(['meaning']), takeOut(3))).toBe('otherWords: [a, b]\nmeaning: It sparks.\n');
  });

  it('is left alone beside a comment, which may be about it', () => {
    const before = 'otherWords:\n  - a\n  - A # why\n';
    expect(repaired(before, takeOut(1))).toBe(before);
  });
});

describe('a page with prose', () => {
  const file = 'content/procedures/swap.mdx';
  it.each([
    ['lines that end in a line feed', '\n'],
    ['lines that end in carriage return and line feed', '\r\n'],
  ])('is repaired in its fields alone, with %s', (_label, end) => {
    const before = ['---', 'summary: Swap them', '---', '', 'summary: Swap them', ''].join(end);
    const after = ['---', 'summary: Swap them.', '---', '', 'summary: Swap them', ''].join(end);
    expect(repairText(file, before, [stop(['summary'])]).text).toBe(after);
  });

  it('without fields is left alone', () => {
    expect(repairText(file, 'No fields.\n', [stop(['summary'])])).toEqual({ text: 'No fields.\n', reports: [] });
  });
});

describe('formatRepairs', () => {
  it('says so when there is nothing to do', () => {
    const { repair: _repair, ...byHand } = stop(['meaning']);
    expect(formatRepairs(repairText('content/glossary/coil.yaml', 'meaning: It\n', [byHand]).reports)).toBe('Nothing that can be repaired without an author.');
  });
});
