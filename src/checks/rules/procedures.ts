import { specialTools } from '../../domain/diagnosis/types.ts';
import { entryRule } from './rule.ts';
import { specialToolWords } from './specialTools.data.ts';

export const arrangementLimitsNeedAReason = entryRule(
  'procedures',
  'arrangement-limits-need-a-reason',
  'A test that is not offered must say why, or the mechanic thinks the book has forgotten it.',
  (procedure, report) => {
    const limited = procedure.ignition !== undefined || procedure.injection !== undefined;
    if (limited && procedure.notPossible === undefined) {
      report([procedure.ignition === undefined ? 'injection' : 'ignition'], {
        found: 'a limit to some arrangements without notPossible',
        expected: 'notPossible: one sentence that says why it cannot be done on the others',
      });
    }
    if (!limited && procedure.notPossible !== undefined) {
      report(['notPossible'], { found: 'a reason without a limit', expected: 'ignition or injection to say which arrangements it can be done on' });
    }
  },
);

export const outcomesAreDistinct = entryRule(
  'procedures',
  'outcomes-are-distinct',
  'A look or test that can end in one way only, or in two ways of one name, tells nothing.',
  (procedure, report) => {
    const telling = procedure.kind === 'look' || procedure.kind === 'test';
    if (telling && procedure.outcomes.length < 2) {
      report(['outcomes'], { found: `1 outcome in a procedure of the kind ${procedure.kind}`, expected: 'at least 2 outcomes' });
    }
    const ids = procedure.outcomes.map((outcome) => outcome.id);
    ids.forEach((id, index) => {
      if (ids.indexOf(id) !== index) report(['outcomes', index, 'id'], { found: `"${id}" a second time`, expected: 'a different id for each outcome' });
    });
  },
);

export const verdictsComeFromAReading = entryRule(
  'procedures',
  'verdicts-come-from-a-reading',
  'An outcome that a judged reading decides needs a step that takes the reading.',
  (procedure, report) => {
    if (procedure.steps.some((step) => step.reading !== undefined)) return;
    procedure.outcomes.forEach((outcome, index) => {
      if (outcome.verdict === undefined) return;
      report(['outcomes', index, 'verdict'], { found: `the verdict ${outcome.verdict}, but no step takes a reading`, expected: 'a reading at one of the steps, or no verdict' });
    });
  },
);

export const toolsAreNamed = entryRule(
  'procedures',
  'tools-are-named',
  'A tool that is missed half way costs a walk, or is made up for with the wrong one.',
  (procedure, report) => {
    // A look is done with eyes and hands; that is the one reason for no tool at all.
    if (procedure.kind === 'look' || procedure.tools.length > 0) return;
    report(['tools'], {
      found: `an empty list in a procedure of the kind ${procedure.kind}`,
      expected: 'at least one tool; only a look needs none',
      example: 'tools: [{ name: Code reader }]',
    });
  },
);

/** A name with a choice in it, `a lamp or a borescope`, asks for neither. */
const choice = /\bor\b/;

export const specialToolsAreNeeds = entryRule(
  'procedures',
  'special-tools-are-needs',
  'A test is offered by what the shop has: with a tool missing from the needs it is proposed to a shop that cannot do it.',
  (procedure, report) => {
    for (const tool of specialTools) {
      const words = specialToolWords[tool];
      const needed = procedure.needs.indexOf(tool);
      const asked = procedure.tools.findIndex(({ name, without }) => without === undefined && !choice.test(name) && words.test(name));
      if (asked >= 0 && needed < 0) {
        report(['tools', asked], { found: `${tool} without another way, and not among the needs`, expected: `${tool} in needs, or a \`without\` that says how it is done without`, example: `needs: [${tool}]` });
      }
      if (needed >= 0 && !procedure.tools.some(({ name }) => words.test(name))) {
        report(['needs', needed], { found: `${tool}, which none of the tools names`, expected: 'a tool that names it, or no such need' });
      }
    }
  },
);

export const accessWithinMinutes = entryRule(
  'procedures',
  'access-within-minutes',
  'Opening the car up is part of the minutes: were it all of them, a test on an open car would cost nothing.',
  (procedure, report) => {
    const access = Object.values(procedure.access).reduce((sum, minutes) => sum + minutes, 0);
    if (access < procedure.minutes) return;
    report(['access'], { found: `${access} minutes of access in a procedure of ${procedure.minutes} minutes`, expected: `less than ${procedure.minutes} together` });
  },
);

export const againWithinMinutes = entryRule(
  'procedures',
  'again-within-minutes',
  'At a further place everything is set up still, so it never takes longer; and what one run shows at every place is not done again.',
  (procedure, report) => {
    const { minutes, minutesAgain, showsEveryPlace } = procedure;
    if (minutesAgain === undefined) return;
    if (minutesAgain > minutes) report(['minutesAgain'], { found: `${minutesAgain} minutes again, ${minutes} minutes at first`, expected: `at most ${minutes}` });
    if (showsEveryPlace) report(['minutesAgain'], { found: 'minutes for a further place of a procedure that shows every place', expected: 'one of the two alone' });
  },
);
