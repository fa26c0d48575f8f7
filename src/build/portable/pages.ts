import { readTags, type Attribute, type Tag } from '../html.ts';

/** Attributes that hold an address a reader may go to. */
const ADDRESS = new Set(['href', 'action', 'formaction']);

/**
 * A page of the site, made ready to be opened from a folder: links name files, because a folder on disk shows its list
 * of files and not its page; the page says which edition it is; and the web manifest, which a browser refuses to read
 * from disk, is left out. Links must be relative already.
 */
export function portablePage(html: string): string {
  let result = '';
  let copied = 0;
  for (const { start, end, text } of readTags(html).flatMap((tag) => changesTo(tag, html))) {
    result += html.slice(copied, start) + text;
    copied = end;
  }
  return result + html.slice(copied);
}

interface Change {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

function changesTo(tag: Tag, html: string): Change[] {
  const afterName = tag.start + 1 + tag.name.length;
  if (tag.name === 'html') return [{ start: afterName, end: afterName, text: ' data-edition="portable"' }];
  if (tag.name === 'link' && tag.attributes.some(({ name, value }) => name === 'rel' && value === 'manifest')) {
    return [{ start: tag.start, end: html.indexOf('>', tag.start) + 1, text: '' }];
  }
  return tag.attributes.flatMap(fileForFolder);
}

function fileForFolder({ name, value, start, end }: Attribute): Change[] {
  const isOurs = ADDRESS.has(name) && !/^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(value);
  const text = value.replace(/^([^?#]*\/)(?=$|[?#])/, '$1index.html');
  return isOurs && text !== value ? [{ start, end, text }] : [];
}
