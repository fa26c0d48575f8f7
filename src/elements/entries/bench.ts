import { JobBench } from '../jobs/jobBench.ts';

customElements.define('job-bench', JobBench);
