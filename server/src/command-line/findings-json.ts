import type { FileFindings, FindingRow } from './findings.ts';
import type { Failure } from './find-files.ts';
import type { Threshold } from './exit-status.ts';
import type { TextPlace } from './source-lines.ts';
import type { Counts } from './summary.ts';
import { version } from '../../../package.json';

/** Version of the shape below, described by schemas/findings-1.schema.json; rises with every change that breaks a reader. */
export const findingsShape = 'findings-1';

interface JsonRange {
  readonly start: TextPlace & { readonly offset: number };
  readonly end: TextPlace & { readonly offset: number };
}

/** What `check --format json` prints. */
export function findingsJson(files: readonly FileFindings[], run: { readonly status: number; readonly failOn: Threshold; readonly counts: Counts; readonly failures: readonly Failure[]; readonly unmatched: readonly string[] }): string {
  const { status, failOn, counts, failures, unmatched } = run;
  const document = {
    format: findingsShape,
    tool: { name: 'axiswright', version },
    status,
    failOn,
    counts,
    files: files.map(({ machine, findings }) => ({ path: machine.path, findings: findings.map(findingJson) })),
    failures,
    unmatched,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

function findingJson(finding: FindingRow): object {
  const { code, severity, message, cautions, span, start, end, related, fixes, subject, certain, figure, worst, limit } = finding;
  const range: JsonRange = { start: { ...start, offset: span.start }, end: { ...end, offset: span.end } };
  return {
    code,
    severity,
    message,
    cautions,
    range,
    related: related.map((place) => ({ path: place.path, range: { start: place.start, end: place.end }, message: place.message })),
    fixes,
    ...(subject === undefined ? {} : { subject, certain }),
    ...(figure === undefined ? {} : { figure, ...(worst === undefined ? {} : { worst, limit }) }),
  };
}
