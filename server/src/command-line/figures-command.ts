import { figuresOf, type FigureRow } from '../services/figures-table.ts';
import { printable } from './cells.ts';
import { exitStatus, type ExitStatus } from './exit-status.ts';
import { figureDetail } from './figure-detail.ts';
import { isPartList } from './find-files.ts';
import { figuresJson, type FileFigures } from './figures-json.ts';
import { figuresReport, partListReport } from './figures-report.ts';
import type { Host, SharedOptions } from './host.ts';
import { readMachines } from './read-machines.ts';
import { pageFor } from './style.ts';
import { dayOf } from './today.ts';
import { failureLine, unmatchedLine } from './summary.ts';

export interface FiguresOptions extends SharedOptions {
  readonly format: 'human' | 'json';
  readonly figure?: string;
  readonly all?: boolean;
}

/** `axiswright figures` */
export async function runFigures(paths: readonly string[], options: FiguresOptions, host: Host): Promise<ExitStatus> {
  const { figure, format } = options;
  const allowNone = options.allowNone === true;
  const page = pageFor(host, options.color);
  const read = await readMachines({ paths, as: options.as, ignore: options.ignore, current: host.current, input: host.input, today: dayOf(host) });
  for (const failure of read.failures) host.complain(failureLine(failure));
  if (!allowNone) for (const pattern of read.unmatched) host.complain(unmatchedLine(pattern));

  const readable = read.failures.length;
  const files: FileFigures[] = [];
  const ids = new Set<string>();
  let gap = '';
  const show = (text: string): void => {
    host.print(gap + text);
    gap = '\n';
  };
  for (const { path, snapshot } of read.machines) {
    if (snapshot.analysis === undefined) {
      if (format === 'human' && figure === undefined && isPartList(path)) show(partListReport(path, page));
      continue;
    }
    const every = figuresOf(snapshot);
    const rows = wantedOf(every, options);
    for (const row of every) ids.add(row.id);
    files.push({ path, rows });
    if (format === 'human' && figure === undefined) show(figuresReport(path, rows, every.length - rows.length, page));
    if (format === 'human' && figure !== undefined) for (const row of rows) show(figureDetail(path, row, every, read.places, page));
    await host.breathe();
  }

  for (const failure of read.failures.slice(readable)) host.complain(failureLine(failure));
  const unknown = figure !== undefined && files.length > 0 && files.every((file) => file.rows.length === 0);
  if (unknown) host.complain(`${printable(`No figure "${figure}" concerns these machines.${nearest(figure, ids)} All: axiswright figures --all`)}\n`);
  const refused = read.failures.length > 0 || (read.unmatched.length > 0 && !allowNone) || unknown;
  const status = refused ? exitStatus.couldNotRun : exitStatus.passed;
  if (format === 'json') host.print(figuresJson(files, { ...read, status }, read.places));
  return status;
}

function wantedOf(rows: readonly FigureRow[], { figure, all }: FiguresOptions): readonly FigureRow[] {
  if (figure !== undefined) return rows.filter((row) => row.id === figure);
  return all === true ? rows : rows.filter((row) => row.state === 'computed');
}

/** Identifiers that share a word with what was asked for. */
function nearest(asked: string, ids: ReadonlySet<string>): string {
  const words = asked.toLowerCase().split(/[^a-z]+/).filter((word) => word.length > 2);
  const shared = (id: string): number => words.filter((word) => id.includes(word)).length;
  const near = [...ids].filter((id) => shared(id) > 0).sort((a, b) => shared(b) - shared(a) || (a < b ? -1 : 1));
  return near.length === 0 ? '' : ` Near it: ${near.slice(0, 5).join(', ')}.`;
}
