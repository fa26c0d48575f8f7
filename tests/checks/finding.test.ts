import { describe, expect, it } from 'vitest';
import { fieldName, formatFindings, showValue } from '../../src/checks/finding.ts';
import type { Finding } from '../../src/checks/finding.ts';

function finding(file: string, line: number, field: string): Finding {
  return { file, line, field, found: '"abc"', expected: "a number in the range's unit", rule: 'schema' };
}

describe('formatFindings', () => {
  it('says so when there are none', () => {
    expect(formatFindings([])).toBe('No findings.');
  });

  it('groups by file and sorts by line, whatever the order they came in', () => {
    const findings = [finding('content/ranges/b.yaml', 12, 'high'), finding('content/ranges/a.yaml', 3, 'low'), { ...finding('content/ranges/b.yaml', 7, 'low'), example: 'low: 0.3' }];
    expect(formatFindings(findings)).toBe(
      [
        'content/ranges/a.yaml:3  low',
        '    found: "abc"',
        "    expected: a number in the range's unit",
        '',
        'content/ranges/b.yaml:7  low',
        '    found: "abc"',
        "    expected: a number in the range's unit",
        '    example: low: 0.3',
        'content/ranges/b.yaml:12  high',
        '    found: "abc"',
        "    expected: a number in the range's unit",
        '',
        '3 findings in 2 files.',
      ].join('\n'),
    );
  });
});

describe('fieldName', () => {
  it('counts list entries from 1', () => {
    expect(fieldName(['steps', 2, 'caution'])).toBe('steps › 3 › caution');
    expect(fieldName([])).toBe('the whole file');
  });
});

describe('showValue', () => {
  it.each([
    ['nothing', null, 'nothing'],
    ['text', 'a "b"', '"a \\"b\\""'],
    ['a list', [1, 2], 'a list of 2'],
    ['a group', { low: 1, high: 2 }, 'the fields low, high'],
    ['long text', 'x'.repeat(300), `"${'x'.repeat(96)}…"`],
  ])('shows %s', (_label, value, expected) => {
    expect(showValue(value)).toBe(expected);
  });
});
