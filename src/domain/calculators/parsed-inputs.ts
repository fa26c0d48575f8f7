import type { ParsedInputs } from './definition.ts';
import type { ParsedField } from './parse-field.ts';

function absent(name: string): never {
  throw new RangeError(
    `The calculator reads ${name} as if it were always there; make it required or give it a default.`,
  );
}

/**
 * Parsed fields as a calculator reads them. Where an open circuit was typed, `has` is true, `text` gives what was typed and
 * `optionalNumber` gives nothing. Reading a missing field as certain is a mistake of the definition and throws.
 */
export function parsedInputs(fields: ReadonlyMap<string, ParsedField>): ParsedInputs {
  const optionalNumber = (name: string) => {
    const field = fields.get(name);
    return field?.kind === 'value' ? field.value : undefined;
  };
  const optionalNumbers = (name: string) => {
    const field = fields.get(name);
    return field?.kind === 'list' ? field.values : undefined;
  };
  const optionalText = (name: string) => fields.get(name)?.text;
  return {
    number: (name) => optionalNumber(name) ?? absent(name),
    optionalNumber,
    resolution: (name) => {
      const field = fields.get(name);
      return field?.kind === 'value' ? field.resolution : absent(name);
    },
    numbers: (name) => optionalNumbers(name) ?? absent(name),
    optionalNumbers,
    text: (name) => optionalText(name) ?? absent(name),
    optionalText,
    has: (name) => fields.has(name),
  };
}
