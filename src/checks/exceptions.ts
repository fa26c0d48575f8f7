import type { RuleException } from './rules/rule.ts';

/** Findings that the book lives with. Each has its reason, and fails the check once it is no longer needed. */
export const exceptions: readonly RuleException[] = [];
