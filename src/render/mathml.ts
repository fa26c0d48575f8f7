import temml from 'temml';

/** A formula as MathML, made when the page is made; no script runs for it in the browser. */
export function mathml(tex: string, display = false): string {
  // Temml puts presentation hints into style attributes; the content security policy allows none, and MathML reads well without.
  return temml.renderToString(tex, { displayMode: display, throwOnError: true, annotate: false }).replace(/ style="[^"]*"/g, '');
}
