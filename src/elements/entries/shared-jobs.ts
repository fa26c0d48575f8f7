import { SharedJobs } from '../sync/sharedJobs.ts';
import { SharedJobsLine } from '../sync/sharedLine.ts';
import { sharing } from '../sync/sharing.ts';

sharing.start();
customElements.define('shared-jobs-line', SharedJobsLine);
customElements.define('shared-jobs', SharedJobs);
