import { JobBench } from '../jobs/jobBench.ts';
import { JobList } from '../jobs/jobList.ts';

customElements.define('job-list', JobList);
customElements.define('job-bench', JobBench);
