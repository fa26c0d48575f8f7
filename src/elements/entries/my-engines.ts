import { MyEngines } from '../figures/myEngines.ts';

customElements.define('my-engines', MyEngines);
