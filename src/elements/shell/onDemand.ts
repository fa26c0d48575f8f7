import { isPortable } from '../edition.ts';
import { readSharedFolder } from '../storage/sharedJobs.ts';
import { scriptWantedEvent, type ScriptWanted } from '../wantedScript.ts';
import { workerWantedEvent, type WorkerWanted } from '../wantedWorker.ts';
import { scriptAddress, workerAddress } from './scripts.ts';

const arrivals = new Map<string, Promise<boolean>>();

/** Fetches a script of the book, at most once; one that did not arrive may be asked for again. */
function load(place: string): Promise<boolean> {
  const known = arrivals.get(place);
  if (known) return known;
  const arrival = new Promise<boolean>((resolve) => {
    const script = document.createElement('script');
    script.src = scriptAddress(place);
    script.addEventListener('load', () => resolve(true));
    script.addEventListener('error', () => {
      arrivals.delete(place);
      resolve(false);
    });
    document.head.append(script);
  });
  arrivals.set(place, arrival);
  return arrival;
}

async function startWorker(name: string): Promise<Worker | undefined> {
  const arrived = await load(`assets/${name}-worker.js`);
  const text = globalThis.ignitionBenchBookWorkers?.[name];
  if (!arrived || text === undefined) return undefined;
  const { address, plain } = workerAddress(text);
  const worker = new Worker(address);
  // The browser has taken the text over once the worker has been made; a moment's grace costs nothing.
  setTimeout(() => URL.revokeObjectURL(plain), 10_000);
  return worker;
}

function whenIdle(work: () => void): void {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(work, { timeout: 3000 });
  else setTimeout(work, 300);
}

function whenTouched(selector: string, place: string): void {
  document.addEventListener('focusin', (event) => {
    if (event.target instanceof Element && event.target.closest(selector)) void load(place);
  });
}

/**
 * Reading fields and search fields get their scripts when first touched, or when the browser has nothing else to do: a page that is
 * only read does not wait for them. What was typed meanwhile is answered when the script arrives.
 */
export function scriptsOnDemand(): void {
  document.addEventListener(scriptWantedEvent, (event) => {
    const { place, done } = (event as CustomEvent<ScriptWanted>).detail;
    void load(place).then(done);
  });
  document.addEventListener(workerWantedEvent, (event) => {
    const { name, done } = (event as CustomEvent<WorkerWanted>).detail;
    void startWorker(name).then(done);
  });
  const readings = 'reading-check, arrangement-switch';
  if (document.querySelector(readings)) {
    whenTouched(readings, 'assets/reading.js');
    whenIdle(() => void load('assets/reading.js'));
  }
  // What a job needs after its first test comes while the mechanic reads.
  if (document.querySelector('job-bench')) whenIdle(() => void load('assets/bench-later.js'));
  // Jobs are shared between bays only where that was switched on.
  if (document.querySelector('job-list, job-bench') && !isPortable() && readSharedFolder()) whenIdle(() => void load('assets/shared-jobs.js'));
  const search = document.querySelector<HTMLElement>('book-search');
  if (!search) return;
  whenTouched('book-search', 'assets/search.js');
  // The start and search pages are there to be typed into; with a mouse at hand the start page takes the focus at once.
  if (search.dataset['autofocus'] && matchMedia('(pointer: fine)').matches) search.querySelector('input')?.focus();
  if (search.dataset['autofocus'] || search.dataset['filters']) whenIdle(() => void load('assets/search.js'));
}
