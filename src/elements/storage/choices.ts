const prefix = 'ignition-bench-book:choice:';

/** A choice made on a page and kept on this device, such as the ignition arrangement; empty where none is kept. */
export function readChoice(name: string): string {
  try {
    return localStorage.getItem(prefix + name) ?? '';
  } catch {
    return '';
  }
}

/** Keeps a choice. Where the browser keeps nothing the choice holds until the page is left. */
export function writeChoice(name: string, value: string): void {
  try {
    localStorage.setItem(prefix + name, value);
  } catch {
    // Nothing is lost but the memory of the choice.
  }
}
