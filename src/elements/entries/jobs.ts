import { JobList } from '../jobs/jobList.ts';

customElements.define('job-list', JobList);
