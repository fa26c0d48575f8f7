import { JobSheet } from '../jobs/jobSheet.ts';

customElements.define('job-sheet', JobSheet);
