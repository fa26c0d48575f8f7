/** The size and speed measurements use the same browser, so it is started from `src/build`. */
export { launchBrowser, launchWithProfile } from '../../../src/build/browser.ts';
