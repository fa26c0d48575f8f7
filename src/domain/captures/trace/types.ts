/** Why a trace could not be read. Each kind of trace uses some of these. */
export type TraceRefusalCode =
  | 'too-few-samples'
  | 'no-signal'
  | 'no-event'
  | 'sampled-too-slowly'
  | 'times-do-not-rise'
  | 'setting-wrong'
  | 'no-missing-tooth';

/** Which cylinder an event belongs to, and how that was found. */
export interface Assignment {
  /** For each event its cylinder, or nothing where it cannot be told. */
  readonly cylinders: readonly (number | undefined)[];
  /** `trigger`: by the marks of a second channel; `counting`: from the first event on; `none`: no firing order was given. */
  readonly by: 'trigger' | 'counting' | 'none';
  /** Turns in which an event that should have come did not, by cylinder. */
  readonly missing: ReadonlyMap<number, number>;
}
