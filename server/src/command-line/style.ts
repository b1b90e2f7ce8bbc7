import type { Host, SharedOptions } from './host.ts';

/** Colours of a terminal, or none. */
export interface Style {
  readonly bold: (text: string) => string;
  readonly faint: (text: string) => string;
  /** The colour of a severity. */
  readonly severity: (severity: string, text: string) => string;
}

/** Whether to colour: NO_COLOR wins, then FORCE_COLOR, then the switch; without any, only a terminal is coloured. */
export function wantsColor(env: Readonly<Record<string, string | undefined>>, choice: SharedOptions['color'], isTerminal: boolean): boolean {
  if (env['NO_COLOR'] !== undefined && env['NO_COLOR'] !== '') return false;
  const force = env['FORCE_COLOR'];
  if (force !== undefined) return force !== '0' && force !== 'false';
  if (choice !== 'auto') return choice === 'always';
  return isTerminal && env['TERM'] !== 'dumb';
}

const paint = (code: number) => (text: string): string => (text === '' ? '' : `\u001b[${code}m${text}\u001b[0m`);
const same = (text: string): string => text;

const severityColors: Readonly<Record<string, number>> = { error: 31, warning: 33, information: 36, hint: 90 };

export function styleOf(color: boolean): Style {
  if (!color) return { bold: same, faint: same, severity: (_severity, text) => text };
  return { bold: paint(1), faint: paint(2), severity: (severity, text) => paint(severityColors[severity] ?? 0)(text) };
}

/** Columns to write in: those of the terminal, else COLUMNS, else 80; between 40 and 120, since longer lines read badly. */
export function columnsOf(env: Readonly<Record<string, string | undefined>>, terminalColumns: number | undefined): number {
  const stated = Number.parseInt(env['COLUMNS'] ?? '', 10);
  const columns = terminalColumns !== undefined && terminalColumns > 0 ? terminalColumns : stated > 0 ? stated : 80;
  return Math.min(120, Math.max(40, columns));
}

/** What a report is written on. */
export interface Page {
  readonly columns: number;
  readonly style: Style;
}

/** A page as plain data, which a worker can be given. */
export interface PageSetup {
  readonly columns: number;
  readonly color: boolean;
}

export const pageSetupFor = (host: Host, color: SharedOptions['color']): PageSetup => ({
  columns: columnsOf(host.env, host.terminalColumns),
  color: wantsColor(host.env, color, host.isTerminal),
});

export const pageFrom = ({ columns, color }: PageSetup): Page => ({ columns, style: styleOf(color) });

export const pageFor = (host: Host, color: SharedOptions['color']): Page => pageFrom(pageSetupFor(host, color));
