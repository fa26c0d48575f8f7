import { MyMeters } from '../meters/myMeters.ts';

customElements.define('my-meters', MyMeters);
