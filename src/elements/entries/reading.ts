import { ArrangementSwitch } from '../reading/arrangementSwitch.ts';
import { ReadingCheck } from '../reading/readingCheck.ts';

customElements.define('reading-check', ReadingCheck);
customElements.define('arrangement-switch', ArrangementSwitch);
