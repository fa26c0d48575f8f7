import { isPortable } from '../edition.ts';
import { scriptAddress } from './scripts.ts';

/** What the service worker tells of the copy of the book it keeps. */
interface WorkerState {
  readonly buildId: string;
  readonly files: number;
  readonly bytes: number;
}

type OfflineState = 'unknown' | 'kept' | 'keeping' | 'needs-server' | 'from-disk' | 'new-version' | 'failed';

function show(state: OfflineState, text: string): void {
  for (const line of document.querySelectorAll<HTMLElement>('[data-offline-state]')) {
    line.dataset['offlineState'] = state;
    line.textContent = text;
  }
}

function ask(worker: ServiceWorker): Promise<WorkerState> {
  return new Promise((resolve, reject) => {
    const channel = new MessageChannel();
    const late = setTimeout(() => reject(new Error('no answer')), 4000);
    channel.port1.onmessage = ({ data }) => {
      clearTimeout(late);
      resolve(data as WorkerState);
    };
    worker.postMessage({ type: 'state' }, [channel.port2]);
  });
}

async function showKept(worker: ServiceWorker): Promise<void> {
  try {
    const { files, bytes, buildId } = await ask(worker);
    show('kept', `Whole book on this device: ${files} files, ${(bytes / 1e6).toFixed(1)} MB, build ${buildId.slice(0, 8)}.`);
  } catch {
    show('failed', 'The copy of the book on this device does not answer. Reload the page where there is a network.');
  }
}

/** A new version waits until it is asked for, so that nothing typed is lost. */
function offerNewVersion(waiting: ServiceWorker): void {
  show('new-version', 'A new version of the book is ready. ');
  for (const line of document.querySelectorAll<HTMLElement>('[data-offline-state]')) {
    const use = document.createElement('button');
    use.type = 'button';
    use.className = 'plain';
    use.textContent = 'Use it now';
    use.addEventListener('click', () => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      waiting.postMessage({ type: 'use-new-version' });
    });
    line.append(use);
  }
}

function watchInstalling(worker: ServiceWorker, firstTime: boolean): void {
  if (firstTime) show('keeping', 'Keeping the whole book on this device ...');
  worker.addEventListener('statechange', () => {
    if (worker.state === 'installed' && !firstTime) offerNewVersion(worker);
    if (worker.state === 'activated') void showKept(worker);
    if (worker.state === 'redundant' && firstTime) show('failed', 'The book could not be kept whole on this device. It will be tried again at the next visit.');
  });
}

/** Registers the worker where the browser has one, and says truthfully what holds on this device. */
export async function keepOffline(): Promise<void> {
  if (isPortable()) return show('from-disk', 'Read from a folder on this device.');
  if (!('serviceWorker' in navigator)) {
    return show('needs-server', "Not kept on this device: over plain http the book needs the shop's server. Over https it is kept.");
  }
  try {
    const registration = await navigator.serviceWorker.register(scriptAddress('service-worker.js'));
    if (registration.waiting && registration.active) return offerNewVersion(registration.waiting);
    if (registration.active) await showKept(registration.active);
    if (registration.installing) watchInstalling(registration.installing, !registration.active);
    registration.addEventListener('updatefound', () => {
      if (registration.installing) watchInstalling(registration.installing, !registration.active);
    });
  } catch {
    show('failed', 'The browser did not allow the book to be kept on this device: it needs the shop\'s server.');
  }
}
