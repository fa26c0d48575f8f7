import type { Advice } from '../../domain/diagnosis/advice.ts';
import type { Settings } from '../storage/settings.ts';
import type { JobSession } from './session.ts';
import type { ScreenMemory } from './parts.ts';

/** A test at a place, chosen to be done now. */
export interface ChosenTest {
  readonly test: string;
  readonly place: string;
  readonly partner?: string;
}

/** What the parts of the job bench share. */
export interface Bench {
  readonly session: JobSession;
  readonly memory: ScreenMemory;
  readonly settings: Settings;
  /** The test the mechanic picked over the one proposed. */
  readonly chosen: ChosenTest | undefined;
  /** What the book advises now, reckoned once for each drawing; undefined while the engine is unknown. */
  readonly advice: () => Advice | undefined;
  /** Picks a test for the next drawing, or goes back to what is proposed. */
  choose(test: ChosenTest | undefined): void;
  /** Draws the screen again. */
  draw(): void;
}
