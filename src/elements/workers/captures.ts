import type { CaptureRequest } from '../captures/protocol.ts';
import { captureWork } from '../captures/work.ts';

/** What a worker's own global object has of use here. */
interface WorkerScope {
  postMessage(message: unknown): void;
  addEventListener(type: 'message', listener: (event: { readonly data: CaptureRequest }) => void): void;
}

const scope = globalThis as unknown as WorkerScope;
const work = captureWork((message) => scope.postMessage(message), () => performance.now());
scope.addEventListener('message', ({ data }) => void work(data));
