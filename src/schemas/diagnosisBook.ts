import { ignitionArrangements, injectionArrangements } from '../domain/diagnosis/types.ts';
import type { CodeFamilyModel, DiagnosisBook, FaultModel, TestModel } from '../domain/diagnosis/types.ts';
import type { Book, Entry } from './index.ts';

/** Leaves out the fields that have no value, as the domain's types ask. */
function present<Fields extends object>(fields: Fields): { [Key in keyof Fields]: Exclude<Fields[Key], undefined> } {
  const kept = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as { [Key in keyof Fields]: Exclude<Fields[Key], undefined> };
}

function faultModel(id: string, fault: Entry<'faults'>): FaultModel {
  return present({
    id,
    title: fault.title,
    placeKind: fault.placeKind,
    weight: fault.weight,
    complaint: fault.complaint,
    codes: fault.codes,
    ignition: fault.ignition,
    injection: fault.injection,
    repairMinutes: fault.repairMinutes,
    partCost: fault.partCost,
    part: fault.part,
    partByIgnition: Object.keys(fault.partByIgnition).length > 0 ? fault.partByIgnition : undefined,
    repairProcedure: fault.repairProcedure,
  }) as FaultModel;
}

function testModel(id: string, procedure: Entry<'procedures'>): TestModel {
  const cautions = [...procedure.cautions, ...procedure.steps.flatMap((step) => step.caution ?? [])];
  return present({
    id,
    title: procedure.title,
    kind: procedure.kind,
    placeKind: procedure.placeKind,
    needsPartner: procedure.needsPartner,
    telling: procedure.telling,
    minutes: procedure.minutes,
    minutesAgain: procedure.minutesAgain,
    showsEveryPlace: procedure.showsEveryPlace,
    needs: procedure.needs,
    needsCoverOff: procedure.needsCoverOff,
    access: procedure.access,
    ignition: procedure.ignition ?? ignitionArrangements,
    injection: procedure.injection ?? injectionArrangements,
    notPossible: procedure.notPossible,
    outcomes: procedure.outcomes.map(({ id: outcomeId, label, meaning, next, verdict }) => present({ id: outcomeId, label, meaning, next, verdict })),
    likelihoods: procedure.likelihoods.map((likelihood) => present(likelihood)),
    otherwise: procedure.otherwise ?? {},
    ranges: [...new Set(procedure.steps.flatMap((step) => step.reading?.ranges ?? []))],
    cautions: [...new Set(cautions)],
  }) as TestModel;
}

function codeFamilyModel(id: string, family: Entry<'codes'>): CodeFamilyModel {
  return { id, placeKind: family.counts === 'none' ? 'engine' : family.counts, falseRate: family.falseRate };
}

/** What diagnosis knows, gathered from the content. */
export function diagnosisBook(book: Book): DiagnosisBook {
  return {
    faults: [...book.faults].map(([id, fault]) => faultModel(id, fault)),
    codeFamilies: [...book.codes].map(([id, family]) => codeFamilyModel(id, family)),
    tests: [...book.procedures].map(([id, procedure]) => testModel(id, procedure)),
  };
}
