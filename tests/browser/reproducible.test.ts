import { join } from 'node:path';
import { expect, it } from 'vitest';
import { differences, hashesOf, withBuild } from '../../src/build/reproduce.ts';
import { SITE_FOLDER } from './support/site.ts';

// It stands with the browser tests because it needs the build that has just been made.
it('the same source gives the same bytes, in another folder, time zone and language', () => {
  const here = hashesOf(join(SITE_FOLDER, '..'));
  const again = withBuild({ timeZone: 'Pacific/Auckland', language: 'de_DE.UTF-8' }, hashesOf);
  expect(here.size).toBeGreaterThan(1000);
  expect(differences(here, again)).toEqual([]);
}, 180_000);
