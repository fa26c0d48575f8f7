import type { Job } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import { backupReminder, readSavedToFile } from '../storage/backups.ts';
import { roomUsed } from '../storage/room.ts';
import type { RoomUsed } from '../storage/room.ts';
import { downloadJobs } from './download.ts';
import { now } from './identity.ts';
import { button, paragraph } from './parts.ts';

/** Under the list of jobs: which are due to be saved to a file, all of them in one file, and the room they take. */
export function safeKeeping(jobs: readonly Job[], saved: () => void): Node[] {
  if (jobs.length === 0) return [];
  const due = jobs.filter((job) => backupReminder(job, readSavedToFile(job.id), now()) !== undefined).length;
  const save = button('save-all', 'second-action', 'Save all jobs to one file', () => {
    downloadJobs(jobs);
    saved();
  });
  return [...(due === 0 ? [] : [paragraph('save-reminder', dueWords(due))]), element('p', { class: 'actions' }, save), roomLine()];
}

function dueWords(due: number): string {
  return `${due === 1 ? 'One job is' : `${due} jobs are`} due to be saved to a file: whoever clears the browser’s data clears what is only here.`;
}

function roomLine(): HTMLElement {
  const line = paragraph('field-hint', '');
  void roomUsed().then((room) => {
    if (room !== undefined) line.textContent = roomWords(room);
  });
  return line;
}

/** The browser's figures are estimates and take in the book itself where it is kept on the device. */
export function roomWords({ used, given, keptFast }: RoomUsed): string {
  const promise = keptFast ? 'The browser has promised to clear none of it by itself.' : 'The browser may clear it when the device runs short of room.';
  return `The book and its jobs take about ${megabytes(used)} of the ${megabytes(given)} this browser gives. ${promise}`;
}

function megabytes(bytes: number): string {
  const value = bytes / 1_000_000;
  return value >= 1000 ? `${(value / 1000).toFixed(1)} GB` : `${value.toFixed(value < 10 ? 1 : 0)} MB`;
}
