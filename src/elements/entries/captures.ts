import { CaptureReader } from '../captures/captureReader.ts';

customElements.define('capture-reader', CaptureReader);
