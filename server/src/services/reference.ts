import { scopeOf } from '../figures/figure.ts';
import { allFigures } from '../figures/registry.ts';
import { scopeRow, scopeRows } from '../machine/scopes.ts';
import { blocks, code, escapeMarkdown, table } from './markdown.ts';
import { page, pageIds, type PageId } from './pages.ts';
import { keysReference } from './reference-keys.ts';

const notice = '<!-- Written by npm run reference from the declarations. Do not edit. -->';

/** The whole reference as files: path below `server/docs/` to Markdown. Depends on nothing but the declarations. */
export function referenceFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>([
    ['README.md', indexPage()],
    ['figures.md', figuresPage()],
    ['keys.md', withNotice(keysReference())],
  ]);
  for (const { id, kind } of pageIds()) if (kind !== 'figure') files.set(`checks/${id}.md`, withNotice(page(id) ?? ''));
  return files;
}

const withNotice = (text: string): string => `${notice}\n\n${text}`;

function indexPage(): string {
  const rows = (kind: PageId['kind']): readonly (readonly string[])[] =>
    pageIds().filter((one) => one.kind === kind).map(({ id, title }) => [`[${code(id)}](checks/${id}.md)`, escapeMarkdown(title)]);
  return withNotice(
    `${blocks(
      '# Reference',
      '- [Keys](keys.md): every key of a description, with units, choices and defaults\n- [Figures](figures.md): everything that is computed, with formula and source',
      '## Checks',
      'What is judged about the machine. Each page says what goes wrong, when it is reported, and on what the limit rests.',
      table(['Check', 'What it finds'], rows('check')),
      '## Problems of the text',
      'What can be wrong with the text of a description: its form, its units, its names.',
      table(['Problem', 'What it is'], rows('problem')),
    )}\n`,
  );
}

function figuresPage(): string {
  const registry = allFigures();
  const figures = [...new Set(registry.figures.map(({ id }) => id))].flatMap((id) => registry.get(id) ?? []);
  const used = scopeRows.filter((row) => figures.some((figure) => scopeOf(figure.id) === row.id));
  return withNotice(
    `${blocks(
      '# Figures',
      'Everything that is computed. Every figure shows its derivation in the editor and with `axiswright figures --figure ID`. Where an entry that it needs is missing, it says which.',
      ...used.flatMap((row) => [
        `## ${escapeMarkdown(capital(scopeRow(row.id).title))}`,
        ...figures.filter((figure) => scopeOf(figure.id) === row.id).sort((a, b) => (a.id < b.id ? -1 : 1)).map((figure) => (page(figure.id) ?? '').trimEnd().replace(/^# /, '### ')),
      ]),
    )}\n`,
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
