import { describe, expect, it } from 'vitest';
import { applyExceptions, checkBook, formatCheck } from '../../src/checks/checkBook.ts';
import { domainFacts } from '../../src/checks/domainFacts.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { exceptions } from '../../src/checks/exceptions.ts';
import { lowNotAboveHigh } from '../../src/checks/rules/ranges.ts';
import { rules } from '../../src/checks/rules/index.ts';
import { fixtureRoot } from './fixtureBook.ts';

/** The fixture book has one calculator and no sources of the unit table. */
const facts = { ...domainFacts, calculatorIds: ['coil-resistance'], domainSources: [] };
const options = { facts, exceptions: [] };

describe('checkBook', () => {
  it('finds nothing in a right book, and holds every rule against it', () => {
    expect(checkBook(fixtureRoot('right'), options)).toMatchObject({ findings: [], notRun: [] });
  });

  it('tells everything at once, with the why, and what had to wait', () => {
    expect(`\n${formatCheck(checkBook(fixtureRoot('broken-and-orphaned'), options))}\n`).toMatchSnapshot();
  });

  it('knows the sources that the units and the calculators name', () => {
    expect(domainFacts.domainSources.map(({ id }) => id)).toContain('nist-sp-811');
    expect(domainFacts.domainSources.some(({ usedBy }) => usedBy.startsWith('src/domain/calculators/'))).toBe(true);
    expect(domainFacts.calculatorIds).toContain('coil-resistance');
  });
});

describe('applyExceptions', () => {
  const finding: Finding = { file: 'content/ranges/a.yaml', line: 3, field: 'low', found: 'low 2 above high 1', expected: 'less', rule: 'low-not-above-high' };
  const exception = { rule: 'low-not-above-high', file: 'content/ranges/a.yaml', reason: 'A trial.' };

  it('leaves out what is excepted and nothing else', () => {
    const other = { ...finding, file: 'content/ranges/b.yaml' };
    expect(applyExceptions([finding, other], [exception], [lowNotAboveHigh])).toEqual([other]);
  });

  it('tells an exception that is no longer needed', () => {
    expect(applyExceptions([], [exception], [lowNotAboveHigh])).toEqual([
      {
        file: 'src/checks/exceptions.ts',
        line: 1,
        field: 'low-not-above-high, content/ranges/a.yaml',
        found: 'an exception that is no longer needed ("A trial.")',
        expected: 'no exception: take it off the list',
        rule: 'exceptions',
      },
    ]);
  });

  it('says nothing about an exception whose rule did not run', () => {
    expect(applyExceptions([], [exception], [])).toEqual([]);
  });
});

describe('the exceptions of the book', () => {
  it('name a rule that exists and give a reason in a sentence', () => {
    const names = rules.map((rule) => rule.name);
    expect(exceptions.filter(({ rule, reason }) => !names.includes(rule) || !/^[A-Z].{10,}\.$/.test(reason))).toEqual([]);
  });
});
