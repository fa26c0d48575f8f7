import { describe, expect, it } from 'vitest';
import { rules } from '../../../src/checks/rules/index.ts';
import { judge } from './books.ts';
import { ruleCases } from './cases.ts';

describe.each(rules.map((rule) => [rule.name, rule] as const))('%s', (name, rule) => {
  const cases = ruleCases[name];

  it('has a case that keeps it and a case that breaks it', () => {
    expect(cases?.keeps.length).toBeGreaterThan(0);
    expect(cases?.breaks.length).toBeGreaterThan(0);
  });

  it.each(cases?.keeps ?? [])('is kept: $label', ({ book, context }) => {
    expect(judge(rule, book, context)).toBe('No findings.');
  });

  it.each(cases?.breaks ?? [])('is broken: $label', ({ book, context }) => {
    const said = judge(rule, book, context);
    expect(said).not.toBe('No findings.');
    expect(`\n${said}\n`).toMatchSnapshot();
  });
});

describe('the list of rules', () => {
  it('has a name in lower case and a why in a sentence for each', () => {
    for (const rule of rules) {
      expect(rule.name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(rule.why).toMatch(/^[A-Z].{20,}\.$/);
    }
  });

  it('names each rule once and has no cases of a rule that is gone', () => {
    const names = rules.map((rule) => rule.name);
    expect(new Set(names).size).toBe(names.length);
    expect(Object.keys(ruleCases).filter((name) => !names.includes(name))).toEqual([]);
  });
});
