import type { UnitId, Unit } from '../../domain/units/types.ts';
import type { Book, ContentKind, Entry } from '../../schemas/index.ts';
import { fieldName } from '../finding.ts';
import type { FieldPath, Finding } from '../finding.ts';

/** What the rules may know beside the entries themselves. */
export interface RuleContext {
  /** Where a field was written. */
  readonly place: (kind: ContentKind, id: string, path: FieldPath) => { readonly file: string; readonly line: number };
  /** True for every entry that has a file, also one that breaks its schema. */
  readonly has: (kind: ContentKind, id: string) => boolean;
  readonly idsOf: (kind: ContentKind) => readonly string[];
  /** Prose by `kind/id`, with the line of the file on which it starts. */
  readonly bodies: ReadonlyMap<string, { readonly text: string; readonly firstLine: number }>;
  readonly unitById: (id: UnitId) => Unit | undefined;
  /** Sources named by the calculators and the unit table. */
  readonly domainSources: readonly { readonly usedBy: string; readonly id: string; readonly place?: string }[];
  readonly calculatorIds: readonly string[];
}

/**
 * One thing that must hold over the whole book.
 * Scope `entry`: judged from what is there. Scope `book`: judged from what is missing, so it only runs when every entry could be read.
 */
export interface Rule {
  readonly name: string;
  /** Why it matters at the bench, in one sentence. */
  readonly why: string;
  readonly scope: 'entry' | 'book';
  readonly check: (book: Book, context: RuleContext) => Finding[];
}

/** A finding that the book lives with, for a reason. It is reported once the rule no longer needs it. */
export interface RuleException {
  readonly rule: string;
  readonly file: string;
  readonly reason: string;
}

export interface Complaint {
  readonly found: string;
  readonly expected: string;
  readonly example?: string;
}


/** A finding with the address of the field. */
export function findingAt(
  rule: string,
  context: RuleContext,
  at: { readonly kind: ContentKind; readonly id: string; readonly path: FieldPath },
  complaint: Complaint,
): Finding {
  return { ...context.place(at.kind, at.id, at.path), field: fieldName(at.path), ...complaint, rule };
}

/** A rule that looks at the entries of one kind, one by one. */
export function entryRule<Kind extends ContentKind>(
  kind: Kind,
  name: string,
  why: string,
  complaints: (entry: Entry<Kind>, report: (path: FieldPath, complaint: Complaint) => void, book: Book, context: RuleContext) => void,
): Rule {
  return {
    name,
    why,
    scope: 'entry',
    check(book, context) {
      const findings: Finding[] = [];
      for (const [id, entry] of book[kind]) {
        const report = (path: FieldPath, complaint: Complaint): void => {
          findings.push(findingAt(name, context, { kind, id, path }, complaint));
        };
        complaints(entry, report, book, context);
      }
      return findings;
    },
  };
}
