import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          root: import.meta.dirname,
          include: ['**/*.test.ts'],
          exclude: ['browser/**', 'servers/**', '**/node_modules/**'],
          // Some read the whole project or start a command; a busy machine takes its time over that.
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          root: import.meta.dirname,
          include: ['browser/**/*.test.ts'],
          // Each file drives a Chromium of its own; two at a time is what a small machine bears.
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      // Real servers from the system's packages; `npm test` runs them where they are installed.
      { test: { name: 'servers', root: import.meta.dirname, include: ['servers/**/*.test.ts'], maxWorkers: 1, testTimeout: 60_000, hookTimeout: 120_000 } },
    ],
  },
});
