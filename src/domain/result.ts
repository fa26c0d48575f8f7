/** A value, or a named reason why there is none. Errors are values here: domain code never throws for bad input. */
export type Result<Value, Failure> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly error: Failure };

export function success<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function failure<Failure>(error: Failure): { readonly ok: false; readonly error: Failure } {
  return { ok: false, error };
}

/**
 * Why an input could not be used.
 * `input` names the field, `code` is stable for programs, `message` says what was found, what is accepted and how to fix it.
 */
export interface Refusal<Code extends string = string> {
  readonly input: string;
  readonly code: Code;
  readonly message: string;
}
