/** `npm run reproduce`: builds the book twice, in other folders, time zones and languages, and compares the hash of every file. */
import { differences, hashesOf, withBuild } from '../reproduce.ts';

const first = withBuild({ timeZone: 'UTC', language: 'C' }, hashesOf);
const second = withBuild({ timeZone: 'Pacific/Auckland', language: 'de_DE.UTF-8' }, hashesOf);
const differ = differences(first, second);
for (const path of differ) console.log(`differs: ${path}\n  ${first.get(path) ?? 'is not there'}\n  ${second.get(path) ?? 'is not there'}`);
const zip = 'ignition-bench-book-portable.zip';
console.log(differ.length === 0 ? `Two builds, ${first.size} files, every hash the same. ${zip}: ${first.get(zip) ?? ''}` : `${differ.length} of ${first.size} files differ.`);
process.exitCode = differ.length === 0 ? 0 : 1;
