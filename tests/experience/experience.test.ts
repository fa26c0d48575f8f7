/** What finished jobs count for: by the events of each job, and by the Dirichlet mean over jobs (Gelman et al., from memory). */
import { describe, expect, it } from 'vitest';
import { specialTools } from '../../src/domain/diagnosis/types.ts';
import { hypothesesOf, noneOfTheseShare, priorOf } from '../../src/domain/diagnosis/prior.ts';
import type { DiagnosisBook } from '../../src/domain/diagnosis/types.ts';
import { shopExperience } from '../../src/domain/experience/experience.ts';
import { provenFindings } from '../../src/domain/experience/provenFindings.ts';
import { toolGroups, toolWords } from '../../src/domain/experience/toolWords.ts';
import { inventedSource } from '../../src/domain/jobs/types.ts';
import type { Job, JobEventBody } from '../../src/domain/jobs/types.ts';
import { fourCylinders, layoutOf } from '../fixtures/diagnosisBook.ts';
import { cleared, codes, complaint, count, engine, finding, jobBook, jobOf, noneBack, quietRun, repair } from '../jobs/jobBook.ts';

const handedOver: JobEventBody = { kind: 'handed-over', to: 'Customer' };
const cameBack = (misfire: 'same' | 'different'): JobEventBody => ({ kind: 'came-back', text: 'Shakes again.', misfire });
const checks: readonly JobEventBody[] = (['trims', 'monitors', 'catalyst'] as const).map((check) => ({ kind: 'proof-check', check, state: 'good', note: '' }));
const proven: readonly JobEventBody[] = [engine, complaint, codes, count, finding, repair, cleared, quietRun, noneBack, ...checks];
const finished: readonly JobEventBody[] = [...proven, handedOver];
const plugFinding: JobEventBody = { kind: 'finding-made', hypothesis: 'plug-gap@cylinder-3', label: 'Plug', belief: 0.9, supportedBy: [] };
const plugRepair: JobEventBody = { kind: 'repair-done', what: 'Plugs renewed', hypothesis: 'plug-gap@cylinder-3', minutes: 15 };

describe('what one job found', () => {
  it('the fixture is proven, so that the cases below can fail', () => expect(provenFindings(jobOf(...finished), jobBook)).toHaveLength(1));

  const job = (...bodies: readonly JobEventBody[]): Job => jobOf(...bodies);
  it.each<{ label: string; job: Job; expected: readonly { fault: string; minutes: number; cameBack: 'same' | 'different' | undefined }[] }>([
    // 20 minutes of repair and 2 of the run, as the fixture's events say.
    { label: 'handed over and proven', job: job(...finished), expected: [{ fault: 'coil-winding', minutes: 22, cameBack: undefined }] },
    { label: 'not handed over', job: job(...proven), expected: [] },
    { label: 'handed over unproven, and said so', job: job(...proven, { ...handedOver, unproven: 'No time.' }), expected: [] },
    { label: 'handed over as proven without a run', job: job(...proven.filter((body) => body !== quietRun), handedOver), expected: [] },
    { label: 'without a finding', job: job(...finished.filter((body) => body !== finding)), expected: [] },
    { label: 'hand-over undone', job: job(...finished, { kind: 'undone', undoes: `e${finished.length}` }), expected: [] },
    { label: 'made up to show the book', job: { ...job(...finished), source: `${inventedSource}, example garage` }, expected: [] },
    { label: 'back with the same misfire', job: job(...finished, cameBack('same')), expected: [{ fault: 'coil-winding', minutes: 22, cameBack: 'same' }] },
    {
      label: 'back with another misfire, and that found too',
      job: job(...finished, cameBack('different'), count, plugFinding, plugRepair, cleared, quietRun, noneBack, ...checks, handedOver),
      expected: [
        { fault: 'coil-winding', minutes: 22, cameBack: 'different' },
        { fault: 'plug-gap', minutes: 17, cameBack: undefined },
      ],
    },
    { label: 'back and not finished yet', job: job(...finished, cameBack('same'), complaint), expected: [{ fault: 'coil-winding', minutes: 22, cameBack: 'same' }] },
  ])('$label', ({ job: given, expected }) => {
    expect(provenFindings(given, jobBook).map(({ fault, minutes, cameBack: back }) => ({ fault, minutes, cameBack: back }))).toEqual(expected);
  });
});

const at = (job: Job, id: string, day: string): Job => ({ ...job, id, events: job.events.map((event) => ({ ...event, at: `${day}T10:00:00.000Z` })) });

describe('the shop’s experience', () => {
  const jobs = [
    at(jobOf(...finished), 'a', '2026-01-10'),
    at(jobOf(...finished), 'b', '2026-02-10'),
    at(jobOf(...finished, cameBack('same')), 'c', '2026-03-10'),
    at(jobOf(...finished, cameBack('different')), 'd', '2026-04-10'),
    at(jobOf(...proven), 'open', '2026-04-10'),
  ];

  it('counts what held, and what came back', () => {
    const { faults, jobs: counted } = shopExperience(jobBook, jobs);
    expect(counted).toBe(3);
    expect(faults[0]).toMatchObject({ fault: 'coil-winding', found: 3, meanMinutes: 22, cameBack: 2 });
    expect(faults.slice(1).every(({ found, cameBack: back, meanMinutes }) => found === 0 && back === 0 && meanMinutes === undefined)).toBe(true);
    expect(faults).toHaveLength(jobBook.diagnosis.faults.length);
  });

  it('counts only jobs finished after the clearing', () => {
    expect(shopExperience(jobBook, jobs, '2026-01-31T00:00:00.000Z').jobs).toBe(2);
    expect(shopExperience(jobBook, jobs, '2026-12-31T00:00:00.000Z').book.diagnosis).toBe(jobBook.diagnosis);
  });

  it('says wherever beliefs are shown that the shop’s jobs are in them', () => {
    expect(shopExperience(jobBook, jobs).book.estimatesNote).toBe(`${jobBook.estimatesNote} How common a fault is takes in 3 finished jobs of this shop.`);
    expect(shopExperience(jobBook, []).book.estimatesNote).toBe(jobBook.estimatesNote);
  });

  it('a finding that the book no longer holds counts for nothing', () => {
    const gone = jobOf(...finished.map((body) => (body === finding ? { ...finding, hypothesis: 'gone@cylinder-1' } as JobEventBody : body)));
    expect(shopExperience(jobBook, [gone])).toMatchObject({ jobs: 0, book: { diagnosis: jobBook.diagnosis } });
  });

  /**
   * On one kind of engine the chance of each fault, over all its places, is the Dirichlet mean over jobs:
   * (50 · chance before + jobs of this fault) / (50 + jobs), whatever the number of places. The chances before come from the book alone.
   */
  it('over all places of an engine the chances are the Dirichlet mean over jobs', () => {
    const layout = layoutOf(fourCylinders);
    const chances = (book: DiagnosisBook): Map<string, number> => {
      const hypotheses = hypothesesOf(book, layout);
      const sums = new Map<string, number>();
      priorOf(hypotheses).forEach((chance, index) => {
        const id = hypotheses[index]?.fault?.id;
        if (id !== undefined) sums.set(id, (sums.get(id) ?? 0) + chance / (1 - noneOfTheseShare));
      });
      return sums;
    };
    const found = [...Array.from({ length: 7 }, () => finding), ...Array.from({ length: 3 }, () => ({ ...finding, hypothesis: engineWide }) as JobEventBody)];
    const many = found.map((made, index) => ({ ...jobOf(...finished.map((body) => (body === finding ? made : body))), id: `j${index}` }));
    const before = chances(jobBook.diagnosis);
    const after = chances(shopExperience(jobBook, many).book.diagnosis);
    expect(before.size).toBeGreaterThan(2);
    for (const [id, chance] of before) {
      const jobsOfIt = id === 'coil-winding' ? 7 : id === engineWide.split('@')[0] ? 3 : 0;
      expect(after.get(id), id).toBeCloseTo((50 * chance + jobsOfIt) / 60, 12);
    }
  });

  const engineWide = `${jobBook.diagnosis.faults.find(({ placeKind }) => placeKind === 'engine')?.id ?? ''}@engine`;
});

describe('the words for tools', () => {
  it('every special tool has its words and stands in one group', () => {
    expect(toolGroups.flatMap(({ tools }) => tools).toSorted()).toEqual([...specialTools].toSorted());
    expect(new Set(Object.values(toolWords)).size).toBe(specialTools.length);
  });
});
