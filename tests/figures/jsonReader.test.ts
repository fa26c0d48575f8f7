import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJson } from '../../src/domain/figures/jsonReader.ts';

// The outside reference is the language's own reader, JSON.parse (ECMAScript, after RFC 8259).

const byLanguage = (text: string): { readonly ok: boolean; readonly value?: unknown } => {
  try {
    return { ok: true, value: JSON.parse(text) as unknown };
  } catch {
    return { ok: false };
  }
};

describe('a text in JSON', () => {
  it.each([
    '', ' ', '{}', '[]', '[1,2]', '[1,]', '[,1]', '{"a":1,}', '{"a" 1}', '{a:1}', "{'a':1}", '01', '-0', '1.', '.5', '1e5', '1E+5', '+1', 'tru', 'true1', 'NaN', 'null x',
    '"a\\u00e9"', '"a\\x"', '"a', '"a\tb"', '"a\nb"', '"\\"', '"\\\\"', '\u00a01', '[1] 2', '{"a":{"b":[null,false,""]}}', '//', '[1 /*x*/]', '1-2', '"\\ud800"',
  ])('%j is read as the language reads it, or refused as the language does', (text) => {
    const read = readJson(text, 'the file');
    const expected = byLanguage(text);
    expect(read.ok).toBe(expected.ok);
    if (read.ok) expect(read.value.value).toEqual(expected.value);
  });

  it('any value that the language writes is read back the same', () => {
    const value = fc.jsonValue({ maxDepth: 6 }).filter((one) => !JSON.stringify(one).includes('__proto__'));
    fc.assert(
      fc.property(value, fc.constantFrom(0, 2), (one, indent) => {
        const text = JSON.stringify(one, undefined, indent);
        const read = readJson(text, 'the file');
        expect(read.ok && read.value.value).toEqual(JSON.parse(text));
      }),
    );
  });

  it('any text at all is read or refused as the language does, and never throws', () => {
    const scraps = fc.array(fc.constantFrom('{', '}', '[', ']', ',', ':', '"', '\\', '1', '-', '.', 'e', 'a', 'true', 'null', ' ', '\n', '"a"', '"b":'), { maxLength: 14 });
    fc.assert(
      fc.property(fc.oneof(fc.string(), scraps.map((parts) => parts.join(''))), (text) => {
        const read = readJson(text, 'the file');
        const twice = !read.ok && read.error.problem === 'stands twice';
        if (!twice) expect(read.ok).toBe(byLanguage(text).ok);
      }),
      { numRuns: 2000 },
    );
  });

  it('no nesting exhausts the stack, no long text does', () => {
    expect(readJson('['.repeat(500_000), 'the file')).toMatchObject({ ok: false, error: { problem: 'is nested too deep' } });
    expect(readJson(`"${'x'.repeat(1_000_000)}"`, 'the file').ok).toBe(true);
    expect(readJson(`"${'\\'.repeat(999_999)}`, 'the file').ok).toBe(false);
    expect(readJson('9'.repeat(1_000_000), 'the file').ok).toBe(true);
  });

  it('every part has its line, a part that is not there that of the part around it', () => {
    const read = readJson('{\n "a": [\n  1,\n  {"b":\n 2}\n ]\n}', 'the file');
    if (!read.ok) throw new Error(read.error.problem);
    const lines = ['the file', 'the file.a', 'the file.a[0]', 'the file.a[1]', 'the file.a[1].b', 'the file.a[1].c', 'the file.a[7]'].map((at) => read.value.lineOf(at));
    expect(lines).toEqual([1, 2, 3, 4, 4, 4, 2]);
  });
});
