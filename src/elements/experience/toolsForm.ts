import { specialTools } from '../../domain/diagnosis/types.ts';
import type { SpecialTool } from '../../domain/diagnosis/types.ts';
import { toolGroups, toolWords } from '../../domain/experience/toolWords.ts';
import { element } from '../dom.ts';
import { readSettings, writeSettings } from '../storage/settings.ts';

/** Ticks for the tools this shop has not got; each is kept as it is set. */
export function toolsForm(): HTMLElement {
  const note = element('p', { class: 'field-note', role: 'status' });
  const missing = readSettings().toolsNotHad;
  const form = element('form', { id: 'tools', class: 'job-form', autocomplete: 'off' }, ...toolGroups.map((group) => groupOf(group.title, group.tools, missing)));
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('change', () => {
    const ticked = new Set([...form.querySelectorAll<HTMLInputElement>('input:checked')].map((input) => input.value));
    const kept = writeSettings({ toolsNotHad: specialTools.filter((tool) => ticked.has(tool)) });
    note.textContent = kept.ok ? keptWords(kept.value.toolsNotHad.length) : kept.error.message;
  });
  return element('div', {}, form, note);
}

function keptWords(count: number): string {
  if (count === 0) return 'Kept on this device: nothing is missing.';
  return `Kept on this device: ${count} ${count === 1 ? 'tool is' : 'tools are'} missing.`;
}

function groupOf(title: string, tools: readonly SpecialTool[], missing: readonly SpecialTool[]): HTMLElement {
  const ticks = tools.map((tool) => {
    const id = `tool-${tool}`;
    const tick = element('input', { id, type: 'checkbox', value: tool, checked: missing.includes(tool) });
    return element('p', { class: 'field tick' }, tick, element('label', { for: id }, toolWords[tool]));
  });
  return element('fieldset', {}, element('legend', {}, title), ...ticks);
}
