import { JobBench } from '../jobs/jobBench.ts';
import { JobList } from '../jobs/jobList.ts';
import { JobSheet } from '../jobs/jobSheet.ts';

customElements.define('job-list', JobList);
customElements.define('job-bench', JobBench);
customElements.define('job-sheet', JobSheet);
