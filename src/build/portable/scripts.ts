import * as esbuild from 'esbuild';

/**
 * A list of the book's data as a classic script, which a page from disk may load where it may fetch nothing.
 * JSON is JavaScript as it stands (ECMAScript 2019), but for `__proto__`, which a book does not have as a key.
 */
export function dataScript(name: string, json: string): string {
  return `(globalThis.ignitionBenchBookData??={})[${JSON.stringify(name)}]=${json};\n`;
}

/** Where the indexer's script believes that it lies; from there it names its files. */
const PLACE = '/pagefind/';

/**
 * The search as one classic script: the indexer's own code with its index, all in one. The code asks for its files as
 * on a server; here they are handed to it out of the script.
 *
 * @param files the contents of the folder `pagefind/`, `pagefind.js` among them
 */
export async function searchScript(files: ReadonlyMap<string, Uint8Array>): Promise<string> {
  const code = files.get('pagefind.js');
  if (code === undefined) throw new Error('The search index has no pagefind.js.');
  const carried = [...files].filter(([path]) => path !== 'pagefind.js');
  const inBase64 = Object.fromEntries(carried.map(([path, content]) => [path, Buffer.from(content).toString('base64')]));
  const engine = await esbuild.transform(Buffer.from(code).toString('utf8'), {
    format: 'iife',
    globalName: 'pagefind',
    target: 'es2022',
    minify: true,
    legalComments: 'inline',
    define: { 'import.meta.url': JSON.stringify(`${PLACE}pagefind.js`), fetch: 'fetchCarried' },
  });
  return `(()=>{const carried=${JSON.stringify(inBase64)};${fetchCarried}${engine.code}globalThis.ignitionBenchBookPagefind=pagefind})();\n`;
}

/** Stands in for `fetch` in the indexer's code: the files come out of `carried`, unpacked only when asked for. */
const fetchCarried = `const fetchCarried=async(address)=>{
const text=carried[String(address).slice(${PLACE.length}).replace(/\\?.*$/,"")];
return text===undefined?new Response(null,{status:404}):new Response(Uint8Array.from(atob(text),(one)=>one.charCodeAt(0)));
};`;
