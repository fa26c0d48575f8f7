/** What the number in a family's codes counts. */
export type FamilyCount = 'cylinder' | 'coil' | 'bank' | 'none';

/** Codes that follow each other in decimal digits, such as P0301 to P0312. */
export interface CodeRun {
  readonly first: string;
  readonly last: string;
  /** Distance from one place to the next. */
  readonly step?: number | undefined;
  /** The place that the first code names. */
  readonly firstNumber?: number | undefined;
}

/** The part of a family's definition that says which codes belong to it. */
export interface FamilyDefinition {
  /** May hold `{number}` and `{letter}`. */
  readonly title: string;
  readonly counts: FamilyCount;
  readonly members: readonly {
    readonly code: string;
    readonly number?: number | undefined;
    readonly title?: string | undefined;
  }[];
  readonly run?: CodeRun | undefined;
}

export interface FamilyMember {
  readonly code: string;
  /** The cylinder, coil or bank it names; left out where the code names none. */
  readonly number?: number;
  readonly title: string;
}

/** The letter of a place: A for 1, B for 2. */
export function placeLetter(number: number): string {
  return String.fromCharCode(64 + number);
}

/** A title with its `{number}` and `{letter}` filled in; a title of a code that names no place stays as it is. */
export function fillTitle(title: string, number: number | undefined): string {
  if (number === undefined) return title;
  return title.replaceAll('{number}', String(number)).replaceAll('{letter}', placeLetter(number));
}

/** What is wrong with a run, or nothing: its ends must share their first two characters and count up in decimal digits. */
export function runProblem(run: CodeRun): string | undefined {
  const ends = [run.first, run.last];
  if (!ends.every((code) => /^[PCBU]\d{4}$/.test(code)))
    return `a run is counted in decimal digits; ${run.first} to ${run.last} is not`;
  if (run.first.slice(0, 2) !== run.last.slice(0, 2)) return `${run.first} and ${run.last} belong to different groups`;
  const distance = Number(run.last.slice(1)) - Number(run.first.slice(1));
  if (distance < 0) return `${run.last} comes before ${run.first}`;
  const step = run.step ?? 1;
  return distance % step === 0 ? undefined : `${run.last} cannot be reached from ${run.first} in steps of ${step}`;
}

function runCodes(run: CodeRun): { code: string; number: number }[] {
  const problem = runProblem(run);
  if (problem !== undefined) throw new RangeError(problem);
  const [first, step] = [Number(run.first.slice(1)), run.step ?? 1];
  const places = (Number(run.last.slice(1)) - first) / step + 1;
  return Array.from({ length: places }, (_, place) => ({
    code: run.first.charAt(0) + String(first + place * step).padStart(4, '0'),
    number: (run.firstNumber ?? 1) + place,
  }));
}

/**
 * Every code of a family with the place it names and its title. Numbered families count in decimal: P0309 is followed by P0310
 * (SAE J2012); codes between them with a letter in the tail mean something else.
 * A run with a fault in it is a mistake of the author and throws; `runProblem` tells it beforehand.
 */
export function expandFamily(family: FamilyDefinition): readonly FamilyMember[] {
  const fromRun = family.run === undefined ? [] : runCodes(family.run).map((entry) => ({ ...entry, title: undefined }));
  return [...family.members, ...fromRun].map(({ code, number, title }) => {
    const place = family.counts === 'none' ? undefined : number;
    const filled = fillTitle(title ?? family.title, place);
    return place === undefined ? { code, title: filled } : { code, number: place, title: filled };
  });
}
