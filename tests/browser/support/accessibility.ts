import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResults {
  readonly violations: readonly { readonly id: string; readonly help: string; readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[] }[];
}

/** What axe finds wrong on the page by the rules of WCAG 2.2 A and AA and its best practices, one line each. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  // A page from disk may not read its style sheets again, which axe would do.
  const results = (await page.evaluate('axe.run(document, { preload: location.protocol !== "file:", runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })')) as AxeResults;
  return results.violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.slice(0, 3).map((node) => `${node.html} ${node.failureSummary ?? ''}`).join(' | ')}`);
}

/** Controls that are smaller than a gloved finger needs: 48 CSS pixels high; links in running text are left to axe. */
export async function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const controls = [...document.querySelectorAll<HTMLElement>('button, input:not([type="checkbox"], [type="radio"], [type="file"]), select, textarea, summary, .links a, .rows a, nav a')];
    return controls
      .filter((control) => control.checkVisibility())
      .map((control) => ({ control, box: control.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && box.height < 47.5)
      .map(({ control, box }) => `${control.tagName} "${control.textContent?.trim().slice(0, 30)}" is ${box.height.toFixed(0)} px high`);
  });
}

/** How far the page is wider than its window; sideways scrolling of the page itself is never needed. */
export async function sidewaysOverflow(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= wide) return [];
    return [...document.querySelectorAll<HTMLElement>('main *, header *, footer *')]
      .filter((one) => one.getBoundingClientRect().right > wide + 0.5 && !one.closest('.scroll, .table-scroll, .formula'))
      .slice(0, 5)
      .map((one) => `${one.tagName}.${one.getAttribute('class') ?? ''} reaches ${one.getBoundingClientRect().right.toFixed(0)} of ${wide}`);
  });
}
