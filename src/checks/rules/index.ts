import { noTwoTextsAlike } from './alikeTexts.ts';
import { noBannedWords } from './bannedWords.ts';
import { calculatorsHaveProse } from './calculatorsHaveProse.ts';
import { codeFamiliesAreComplete, codesStandInOneFamilyOnly } from './codes.ts';
import { faultsToldApart } from './faultsToldApart.ts';
import { firingOrdersNameEachCylinderOnce } from './firingOrders.ts';
import { hazardWordsHaveTheirCaution } from './hazardWords.ts';
import { idsResolve } from './idsResolve.ts';
import {
  likelihoodsNameAFaultOnce,
  likelihoodsNeedOtherwise,
  outcomeChancesSumToOne,
  partnerChancesOnlyWithAPartner,
} from './likelihoods.ts';
import { nothingOrphaned } from './nothingOrphaned.ts';
import { otherWordsDiffer } from './otherWords.ts';
import { laterNotBelowNow } from './parts.ts';
import {
  accessWithinMinutes,
  againWithinMinutes,
  arrangementLimitsNeedAReason,
  outcomesAreDistinct,
  specialToolsAreNeeds,
  toolsAreNamed,
  verdictsComeFromAReading,
} from './procedures.ts';
import { properNamesAreOnTheList } from './properNames.ts';
import { copperRangesHaveAReferenceTemperature, lowNotAboveHigh, makersFigureComesFirst } from './ranges.ts';
import { proseWithinReach, stepSentencesAreShort } from './readability.ts';
import type { Rule } from './rule.ts';
import { sentencesEndProperly } from './sentencesEnd.ts';
import { everyFigureHasASource, standardsAndRegulationsNeedAPlace } from './sources.ts';
import { titlesAreUnique } from './uniqueTitles.ts';
import { unitFitsQuantity } from './units.ts';

/** Every rule over the whole book. */
export const rules: readonly Rule[] = [
  idsResolve,
  lowNotAboveHigh,
  unitFitsQuantity,
  copperRangesHaveAReferenceTemperature,
  makersFigureComesFirst,
  everyFigureHasASource,
  standardsAndRegulationsNeedAPlace,
  outcomeChancesSumToOne,
  partnerChancesOnlyWithAPartner,
  likelihoodsNeedOtherwise,
  likelihoodsNameAFaultOnce,
  outcomesAreDistinct,
  verdictsComeFromAReading,
  arrangementLimitsNeedAReason,
  toolsAreNamed,
  specialToolsAreNeeds,
  accessWithinMinutes,
  againWithinMinutes,
  laterNotBelowNow,
  hazardWordsHaveTheirCaution,
  firingOrdersNameEachCylinderOnce,
  codeFamiliesAreComplete,
  codesStandInOneFamilyOnly,
  faultsToldApart,
  nothingOrphaned,
  titlesAreUnique,
  noTwoTextsAlike,
  otherWordsDiffer,
  noBannedWords,
  properNamesAreOnTheList,
  sentencesEndProperly,
  stepSentencesAreShort,
  proseWithinReach,
  calculatorsHaveProse,
];
