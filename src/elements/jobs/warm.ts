import type { YesNoUnknown } from '../../domain/jobs/types.ts';

export const warmChoices: readonly { readonly value: YesNoUnknown; readonly label: string }[] = [
  { value: 'unknown', label: 'Not known' },
  { value: 'yes', label: 'Yes, warmed up' },
  { value: 'no', label: 'No, cold or warming up' },
];

export function yesNoUnknown(value: string): YesNoUnknown {
  return value === 'yes' || value === 'no' ? value : 'unknown';
}
