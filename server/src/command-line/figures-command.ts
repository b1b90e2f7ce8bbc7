import { figuresOf, type FigureRow } from '../services/figures-table.ts';
import { printable } from './cells.ts';
import { exitStatus, type ExitStatus } from './exit-status.ts';
import { figureDetail } from './figure-detail.ts';
import { figuresJson } from './figures-json.ts';
import { figuresReport } from './figures-report.ts';
import type { Host, SharedOptions } from './host.ts';
import { readMachines } from './read-machines.ts';
import { pageFor } from './style.ts';
import { complaints } from './summary.ts';

export interface FiguresOptions extends SharedOptions {
  readonly format: 'human' | 'json';
  readonly figure?: string;
  readonly all: boolean;
}

/** `axiswright figures` */
export async function runFigures(paths: readonly string[], options: FiguresOptions, host: Host): Promise<ExitStatus> {
  const read = await readMachines({ paths, as: options.as, current: host.current, input: host.input });
  const { figure } = options;
  const files = read.machines
    .filter(({ snapshot }) => snapshot.analysis !== undefined)
    .map(({ path, snapshot }) => {
      const every = figuresOf(snapshot);
      const wanted = figure === undefined ? every.filter((row) => options.all || row.state === 'computed') : every.filter((row) => row.id === figure);
      return { path, every, rows: wanted };
    });
  const unknown = figure !== undefined && read.machines.length > 0 && files.every((file) => file.rows.length === 0);
  const refused = read.failures.length > 0 || (read.unmatched.length > 0 && !options.allowNone) || unknown;
  const status = refused ? exitStatus.couldNotRun : exitStatus.passed;

  for (const line of complaints(read, options.allowNone)) host.complain(`${printable(line)}\n`);
  if (unknown) host.complain(`${printable(`No figure "${figure}" concerns these machines.${nearest(figure, files.flatMap((file) => file.every))} All: axiswright figures --all`)}\n`);

  if (options.format === 'json') {
    host.print(figuresJson(files, { ...read, status }, read.places));
  } else {
    const page = pageFor(host, options.color);
    const blocks = files.flatMap(({ path, every, rows }) =>
      figure === undefined ? [figuresReport(path, rows, every.length - rows.length, page)] : rows.map((row) => figureDetail(path, row, every, read.places, page)),
    );
    host.print(blocks.join('\n'));
  }
  return status;
}

/** Identifiers that share a word with what was asked for. */
function nearest(asked: string, rows: readonly FigureRow[]): string {
  const words = asked.toLowerCase().split(/[^a-z]+/).filter((word) => word.length > 2);
  const shared = (id: string): number => words.filter((word) => id.includes(word)).length;
  const ids = [...new Set(rows.map((row) => row.id))].filter((id) => shared(id) > 0).sort((a, b) => shared(b) - shared(a) || (a < b ? -1 : 1));
  return ids.length === 0 ? '' : ` Near it: ${ids.slice(0, 5).join(', ')}.`;
}
