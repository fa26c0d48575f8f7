import { calculators } from '../domain/calculators/registry.ts';
import { units } from '../domain/units/table.data.ts';
import { unitById } from '../domain/units/table.ts';
import type { RuleContext } from './rules/rule.ts';

export type DomainFacts = Pick<RuleContext, 'unitById' | 'domainSources' | 'calculatorIds'>;

/** What the code knows that the book must agree with: units, calculators, and the sources that both of them name. */
export const domainFacts: DomainFacts = {
  unitById,
  calculatorIds: calculators.map(({ id }) => id),
  domainSources: [
    ...[...new Set(units.map(({ source }) => source))].map((id) => ({ usedBy: 'src/domain/units/table.data.ts', id })),
    ...calculators.flatMap(({ id, formulas }) =>
      formulas.flatMap(({ sources }) => sources.map((source) => ({ usedBy: `src/domain/calculators/${id}/index.ts`, ...source }))),
    ),
  ],
};
