import { readingForm } from '../jobs/readingForm.ts';
import { offerReadingForm } from '../jobs/readingOnDemand.ts';

offerReadingForm(readingForm);
