import type { CaptureReport, ReportTable } from '../../domain/captures/report/types.ts';
import { element } from '../dom.ts';
import { drawShape } from '../svg.ts';

/** The result: sentences first, then figures, then drawings. */
export function reportNodes(report: CaptureReport): Node[] {
  const [first, ...rest] = report.sentences;
  return [
    ...(first === undefined ? [] : [element('p', { class: 'lead', 'data-capture-finding': true }, first)]),
    ...(rest.length === 0 ? [] : [element('ul', { class: 'capture-sentences' }, ...rest.map((sentence) => element('li', {}, sentence)))]),
    ...report.drawings.map((drawing) => element('figure', { class: 'capture-drawing' }, drawShape(drawing), element('figcaption', { class: 'quiet' }, titleOf(drawing)))),
    ...report.tables.map(tableNode),
  ];
}

function titleOf({ children = [] }: CaptureReport['drawings'][number]): string {
  return children.find(({ tag }) => tag === 'title')?.text ?? '';
}

function tableNode({ caption, head, rows }: ReportTable): HTMLElement {
  return element(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': caption },
    element(
      'table',
      { class: 'figures' },
      element('caption', {}, caption),
      element('thead', {}, element('tr', {}, ...head.map((label) => element('th', { scope: 'col' }, label)))),
      element('tbody', {}, ...rows.map(([name = '', ...cells]) => element('tr', {}, element('th', { scope: 'row' }, name), ...cells.map((cell) => element('td', {}, cell))))),
    ),
  );
}
