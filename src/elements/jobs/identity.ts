/** A new id of 16 hexadecimal digits. `randomUUID` is missing on plain http, `getRandomValues` is not. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(8))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

export function now(): string {
  return new Date().toISOString();
}

/** Day and time as this device writes them, for people. */
export function timeText(at: string): string {
  return new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

export function dayText(at: string): string {
  return new Date(at).toLocaleDateString(undefined, { dateStyle: 'medium' });
}
