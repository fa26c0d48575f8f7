import { element } from './dom.ts';

/** Hands a text to the browser as a file to save. */
export function downloadText(text: string, name: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = element('a', { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken the data over once the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
