import { jsonAt, membersOf, type FilePart, type RunDocument, type RunEnd } from './documents.ts';
import type { Threshold } from './exit-status.ts';
import type { FindingRow } from './findings.ts';
import type { TextPlace } from './source-lines.ts';
import { version } from '../../../package.json';

/** Version of the shape below, described by schemas/findings-1.schema.json; rises with every change that breaks a reader. */
export const findingsShape = 'findings-1';

interface JsonRange {
  readonly start: TextPlace & { readonly offset: number };
  readonly end: TextPlace & { readonly offset: number };
}

/** What `check --format json` prints. */
export class FindingsJson implements RunDocument {
  #files = 0;

  constructor(readonly failOn: Threshold) {}

  begin(): string {
    return `{\n${membersOf({ format: findingsShape, tool: { name: 'axiswright', version }, failOn: this.failOn })},\n  "files": [`;
  }

  file({ path, rows }: FilePart): string {
    return rows === undefined ? '' : `${this.#files++ === 0 ? '' : ','}\n    ${jsonAt({ path, findings: rows.map(findingJson) }, 2)}`;
  }

  /** What is known at the end only stands there: members of an object have no order, and the files need not wait in memory. */
  end({ failures, unmatched, counts, status }: RunEnd): string {
    return `${this.#files === 0 ? '' : '\n  '}],\n${membersOf({ failures, unmatched, counts, status })}\n}\n`;
  }
}

function findingJson(finding: FindingRow): object {
  const { code, severity, message, cautions, span, start, end, related, fixes, accepted, subject, certain, figure, worst, limit } = finding;
  const range: JsonRange = { start: { ...start, offset: span.start }, end: { ...end, offset: span.end } };
  return {
    code,
    severity,
    message,
    cautions,
    range,
    related: related.map((place) => ({ path: place.path, range: { start: place.start, end: place.end }, message: place.message })),
    fixes: fixes.map(({ kind, title }) => ({ kind, title })),
    ...(accepted === undefined ? {} : { accepted: acceptedJson(accepted) }),
    ...(subject === undefined ? {} : { subject, certain }),
    ...(figure === undefined ? {} : { figure, ...(worst === undefined ? {} : { worst, limit }) }),
  };
}

function acceptedJson({ reason, by, until, originally }: NonNullable<FindingRow['accepted']>): object {
  return { reason, ...(by === undefined ? {} : { by }), ...(until === undefined ? {} : { until }), severity: originally };
}
