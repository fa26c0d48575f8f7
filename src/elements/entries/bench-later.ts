import { laterParts } from '../jobs/laterParts.ts';
import { offerLaterParts } from '../jobs/laterOnDemand.ts';

offerLaterParts(laterParts);
