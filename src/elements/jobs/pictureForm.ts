import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import type { ScreenMemory } from './parts.ts';
import { makeSmall } from './smallPicture.ts';
import type { SmallPicture } from './smallPicture.ts';
import { pictureFigure } from './pictureFigure.ts';

/** A chosen picture waits here until it is kept, whatever is drawn meanwhile. */
const waiting = new WeakMap<ScreenMemory, SmallPicture>();

/** A picture for the record: drawn anew and small, so that nothing but the picture itself is kept. */
export function pictureForm(bench: Bench): Node[] {
  const note = element('span', { class: 'field-note', id: 'picture-file-note', role: 'status' });
  const preview = element('div', { class: 'picture-preview' });
  const input = element('input', { id: 'picture-file', type: 'file', accept: 'image/*', 'aria-describedby': 'picture-file-hint picture-file-note' });
  const show = (): void => {
    const picture = waiting.get(bench.memory);
    preview.replaceChildren(...(picture ? [pictureFigure(picture, `${picture.width} × ${picture.height}, ${Math.ceil((picture.jpeg.length * 3) / 4000)} kB`)] : []));
  };
  const choose = async (): Promise<void> => {
    const file = input.files?.[0];
    if (!file) return;
    note.textContent = 'Making it small ...';
    const small = await makeSmall(file);
    note.textContent = small.ok ? '' : small.error;
    input.setAttribute('aria-invalid', String(!small.ok));
    if (small.ok) waiting.set(bench.memory, small.value);
    show();
  };
  input.addEventListener('change', () => void choose());
  show();
  const chooser = element(
    'p',
    { class: 'field' },
    element('label', { for: 'picture-file' }, 'Picture'),
    element('span', { class: 'field-hint', id: 'picture-file-hint' }, 'It is kept small, and without the place, time and device that a camera writes into its file.'),
    input,
    note,
  );
  const form = makeForm(bench.memory, {
    name: 'picture',
    submit: 'Keep the picture',
    fields: [{ name: 'caption', label: 'What it shows', kind: 'line' }],
    take: (values) => {
      const picture = waiting.get(bench.memory);
      if (!picture) return missing('caption', 'Choose a picture first.');
      const caption = values('caption').trim();
      if (caption === '') return missing('caption', 'Say what the picture shows, for those who cannot see it.');
      return () => {
        const refused = bench.session.add({ body: { kind: 'picture', caption, ...picture } });
        if (refused === undefined) waiting.delete(bench.memory);
        show();
        return refused;
      };
    },
  });
  return [chooser, preview, form];
}
