import type { ListedItem } from '../../domain/sync/listing.ts';
import type { Lines } from './server.ts';

const asked =
  '<?xml version="1.0" encoding="utf-8"?><propfind xmlns="DAV:"><prop><getetag/><getcontentlength/><getlastmodified/><resourcetype/></prop></propfind>';

/** The browser's own ways to the server. */
export const browserLines: Lines = { fetch: (address, options) => fetch(address, options), list: listFolder, patience: 20_000 };

/**
 * The page's policy lets no text be parsed by script, so the browser parses the answer while it arrives. The document stands alone: it is never
 * shown and nothing in it runs.
 */
function listFolder(address: string, signal: AbortSignal): Promise<readonly ListedItem[] | number> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('PROPFIND', address);
    request.setRequestHeader('Depth', '1');
    request.setRequestHeader('Content-Type', 'application/xml; charset=utf-8');
    request.overrideMimeType('text/xml');
    request.responseType = 'document';
    request.addEventListener('load', () => {
      const { status, responseXML } = request;
      resolve(status === 207 && responseXML ? (itemsOf(responseXML) ?? 200) : status === 207 ? 200 : status);
    });
    request.addEventListener('error', () => reject(new Error('no answer')));
    request.addEventListener('abort', () => reject(new Error('given up')));
    signal.addEventListener('abort', () => request.abort());
    request.send(asked);
  });
}

/** Undefined where the document is no whole list (RFC 4918, 13). */
function itemsOf(xml: XMLDocument): readonly ListedItem[] | undefined {
  const root = xml.documentElement;
  if (root.namespaceURI !== 'DAV:' || root.localName !== 'multistatus' || xml.querySelector('parsererror')) return undefined;
  return [...root.getElementsByTagNameNS('DAV:', 'response')].map((response) => ({
    href: textIn(response, 'href'),
    etag: textIn(response, 'getetag'),
    length: textIn(response, 'getcontentlength'),
    modified: textIn(response, 'getlastmodified'),
    isFolder: response.getElementsByTagNameNS('DAV:', 'collection').length > 0,
  }));
}

function textIn(parent: Element, name: string): string {
  return parent.getElementsByTagNameNS('DAV:', name)[0]?.textContent?.trim() ?? '';
}
