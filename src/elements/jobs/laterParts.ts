import { anotherTest } from './anotherTest.ts';
import { countForm } from './countForm.ts';
import { changeEngineForm } from './engineForm.ts';
import { findingForm } from './findingSection.ts';
import { frameForm } from './frameForm.ts';
import { handOverSection } from './handOverSection.ts';
import { opinionForm } from './opinionForm.ts';
import { pictureForm } from './pictureForm.ts';
import { proofSection } from './proofSection.ts';
import { readingsSection } from './readingsSection.ts';
import { renameForm } from './renameForm.ts';
import { repairSection } from './repairSection.ts';

/** What is not needed before the first test is proposed; it comes with a script of its own. */
export const laterParts = {
  anotherTest,
  count: countForm,
  engine: changeEngineForm,
  finding: findingForm,
  frame: frameForm,
  handOver: handOverSection,
  opinion: opinionForm,
  picture: pictureForm,
  proof: proofSection,
  readings: readingsSection,
  rename: renameForm,
  repair: repairSection,
};
