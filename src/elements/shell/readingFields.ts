import { scriptAddress } from './scripts.ts';

/**
 * The script that judges readings comes when a reading field is first touched, or when the browser has nothing else to do:
 * a page that is only read does not wait for it. What was typed meanwhile is judged when it arrives.
 */
export function readingFieldsOnDemand(): void {
  if (!document.querySelector('reading-check, arrangement-switch')) return;
  let asked = false;
  const load = () => {
    if (asked) return;
    asked = true;
    const script = document.createElement('script');
    script.src = scriptAddress('assets/reading.js');
    document.head.append(script);
  };
  document.addEventListener('focusin', (event) => {
    if (event.target instanceof Element && event.target.closest('reading-check, arrangement-switch')) load();
  });
  if ('requestIdleCallback' in globalThis) requestIdleCallback(load, { timeout: 3000 });
  else setTimeout(load, 300);
}
