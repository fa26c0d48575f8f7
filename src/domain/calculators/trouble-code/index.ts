import {
  codeArea,
  codeOwner,
  decodeBytes,
  encodeCode,
  isEmptySlot,
  normaliseCode,
  writeBytes,
} from '../../obd/codes.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type {
  Calculation,
  CalculatorDefinition,
  CalculatorMaker,
  CodeMeaning,
  CodeMeanings,
  InputDefinition,
  OutputDefinition,
  OutputValue,
  ParsedInputs,
} from '../definition.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'code',
    label: 'Trouble code',
    kind: 'text',
    optional: true,
    hint: 'Such as P0303. Either case; a letter O typed for zero is understood.',
  },
  {
    name: 'bytes',
    label: 'Or its two bytes, hexadecimal',
    kind: 'text',
    optional: true,
    hint: 'As they come over the bus, such as 03 03.',
    advanced: true,
  },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'code', label: 'Code', kind: 'word', main: true },
  { name: 'meaning', label: 'Meaning', kind: 'word' },
  { name: 'lookFirst', label: 'Look at first', kind: 'word-list' },
  { name: 'area', label: 'Area', kind: 'word' },
  {
    name: 'owner',
    label: 'Whose code',
    kind: 'word',
    words: {
      standard: 'Set by the standard: the same on every make',
      maker: 'The maker’s own',
      reserved: 'Kept free by the standard',
      none: 'Nobody: an empty place',
    },
  },
  { name: 'bytes', label: 'Bytes', kind: 'word' },
];

/** The code that was given, from whichever field was filled; both may be when they agree. */
function readCode(given: ParsedInputs): Result<string, Refusal> {
  const [text, bytes] = [given.optionalText('code'), given.optionalText('bytes')];
  if (bytes === undefined) return normaliseCode(text ?? '');
  const decoded = decodeBytes(bytes);
  if (!decoded.ok || text === undefined) return decoded;
  const typed = normaliseCode(text);
  if (!typed.ok || typed.value === decoded.value) return typed;
  const message = `The bytes ${bytes} are ${decoded.value}, not ${typed.value}. Give the code or its bytes, not both.`;
  return failure({ input: 'bytes', code: 'code-and-bytes-differ', message });
}

function areaText(code: string): string {
  const { system, area } = codeArea(code);
  return area === undefined ? system : `${system}: ${area}`;
}

function emptySlot(): Calculation {
  const note = 'Two zero bytes fill an unused place in the answer: there is no code here.';
  return { outputs: { code: 'P0000', bytes: '00 00', area: 'none', owner: 'none' }, notes: [note] };
}

const makerNote =
  'This code is the maker’s own. Only the maker’s documents for this engine say what it means; the same code means something else on another make.';
const reservedNote = 'The standard keeps this code free: no meaning is set. Check that it was read and copied rightly.';
const proofNote =
  'A code names what the control unit saw, not the part to fit. Note it with its freeze-frame data before clearing anything.';

function describe(
  code: string,
  lookUp: CodeMeanings | undefined,
): { readonly found?: CodeMeaning; readonly note: string } {
  const owner = codeOwner(code);
  if (owner === 'maker') return { note: makerNote };
  if (owner === 'reserved') return { note: reservedNote };
  if (lookUp === undefined) return { note: `What ${code} means is on its page under Codes, if the book holds it.` };
  const found = lookUp(code);
  if (found !== undefined) return { found, note: proofNote };
  return {
    note: `${code} is not in this book. A code next to it may mean something else altogether: look it up in the engine maker’s documents.`,
  };
}

function explain(code: string, lookUp: CodeMeanings | undefined): Calculation {
  if (isEmptySlot(code)) return emptySlot();
  const { found, note } = describe(code, lookUp);
  const values: Record<string, OutputValue> = {
    code,
    bytes: writeBytes(encodeCode(code)),
    area: areaText(code),
    owner: codeOwner(code),
  };
  if (found !== undefined) {
    values['meaning'] = found.meaning;
    values['lookFirst'] = found.lookFirst;
  }
  return { outputs: values, notes: [note] };
}

/**
 * A trouble code taken apart. Meanings are content, so they are handed in; left out, the result names the code's page instead.
 */
export function makeTroubleCode(lookUp?: CodeMeanings): CalculatorDefinition {
  return {
    id: 'trouble-code',
    title: 'Trouble code',
    summary: 'Whose code is this, what does it mean, which bytes carry it, and what comes first?',
    inputs,
    outputs,
    formulas,
    examples,
    table,
    searchWords: [
      'DTC',
      'fault code',
      'error code',
      'P code',
      'engine code',
      'hex',
      'decode',
      'bytes',
      'manufacturer code',
    ],
    compute: (given) => {
      const code = readCode(given);
      return code.ok ? success(explain(code.value, lookUp)) : code;
    },
  };
}

export const calculator: CalculatorMaker = ({ lookUpCode }) => makeTroubleCode(lookUpCode);
