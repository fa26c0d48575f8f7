/**
 * One build in a process of its own, so that its memory is told apart from the benchmark's:
 * `node buildOnce.ts <project folder> <output folder> <cache folder>`. The last line it prints is its peak of resident memory in bytes.
 */
import { build } from 'astro';

const [root = '.', outDir = 'dist', cacheDir = '.astro'] = process.argv.slice(2);
await build({ root, outDir, cacheDir, logLevel: 'error' });
// Node gives the peak in units of 1024 bytes.
console.log(process.resourceUsage().maxRSS * 1024);
