import type { Diagnostic } from '../services/diagnostics.ts';
import { fixesAt, type Fix } from '../services/fixes.ts';
import type { Failure } from './find-files.ts';
import { faultText, type Places, type ReadMachine } from './machine-reader.ts';
import type { TextPlace } from './source-lines.ts';

export type Severity = Diagnostic['severity'];

/** Gravest first. */
export const severities: readonly Severity[] = ['error', 'warning', 'information', 'hint'];

/** A place with its offset in UTF-16 units from the beginning of the text. */
export type OffsetPlace = TextPlace & { readonly offset: number };

/** A change that cures a finding: carried out and checked where it is a remedy. */
export interface FixRow extends Pick<Fix, 'kind' | 'title'> {
  /** What is replaced in which file; all places in the texts as they are. */
  readonly changes: readonly { readonly path: string; readonly edits: readonly { readonly start: OffsetPlace; readonly end: OffsetPlace; readonly text: string }[] }[];
}

/** A finding as every output shows it. Plain data. */
export interface FindingRow {
  /** Identifier of the check or of the language problem. */
  readonly code: string;
  readonly severity: Severity;
  /** What, consequence, cure; without the cautions. */
  readonly message: string;
  /** Hazard sentences, unshortened. */
  readonly cautions: readonly string[];
  readonly span: { readonly start: number; readonly end: number };
  readonly start: TextPlace;
  readonly end: TextPlace;
  readonly related: readonly { readonly path: string; readonly start: TextPlace; readonly end: TextPlace; readonly message: string }[];
  readonly fixes: readonly FixRow[];
  /** Keys that lead to the entry at which it stands, joined by "/"; empty for the text as a whole. They outlive edits elsewhere. */
  readonly entry: string;
  /** Where the description accepts it: why, by whom, until when, and how grave it would be. */
  readonly accepted?: Pick<NonNullable<Diagnostic['accepted']>, 'reason' | 'by' | 'until' | 'originally'>;
  /** Of an engineering finding: what it is about, and whether the limit is broken at the nominal values too. */
  readonly subject?: string;
  readonly certain?: boolean;
  /** The figure compared, its deciding end and the limit that it breaks, in SI. */
  readonly figure?: string;
  readonly worst?: number;
  readonly limit?: number;
}

/** A file with its findings, in the order of the text. */
export interface FileFindings {
  readonly machine: ReadMachine;
  readonly findings: readonly FindingRow[];
}

const cautionSign = 'Caution: ';

/** Findings of a file. Looking for proven remedies is most of the work; without `fixes` it is left out. */
export function findingsIn(machine: ReadMachine, places: Places, fixes: boolean, failed: (failure: Failure) => void): FileFindings {
  const { snapshot } = machine;
  const found = fixes ? fixesOf(machine, failed) : new Map<Diagnostic, Fix[]>();
  const place = (uri: string, span: FindingRow['span']): { readonly start: TextPlace; readonly end: TextPlace } => ({ start: places.placeOf(uri, span.start), end: places.placeOf(uri, span.end) });
  const findings = snapshot.diagnostics.map((diagnostic): FindingRow => {
    const sentences = diagnostic.message.split('\n');
    const { finding } = diagnostic;
    return {
      code: diagnostic.code,
      severity: diagnostic.severity,
      message: sentences.filter((sentence) => !sentence.startsWith(cautionSign)).join(' '),
      cautions: sentences.filter((sentence) => sentence.startsWith(cautionSign)).map((sentence) => sentence.slice(cautionSign.length)),
      span: diagnostic.span,
      ...place(diagnostic.uri, diagnostic.span),
      related: diagnostic.related.map(({ uri, span, message }) => ({ path: places.pathOf(uri), ...place(uri, span), message })),
      fixes: (found.get(diagnostic) ?? []).map((fix) => fixRow(fix, places)),
      entry: (finding ? finding.place.path : snapshot.document.pathAt(diagnostic.span.start).path).join('/'),
      ...(diagnostic.accepted ? { accepted: acceptedOf(diagnostic.accepted) } : {}),
      ...(finding ? { subject: finding.subject, certain: finding.certain } : {}),
      ...(finding?.figure === undefined ? {} : { figure: finding.figure }),
      ...(finding?.worst === undefined || finding.limit === undefined ? {} : { worst: finding.worst, limit: finding.limit }),
    };
  });
  return { machine, findings };
}

function acceptedOf({ reason, by, until, originally }: NonNullable<Diagnostic['accepted']>): NonNullable<FindingRow['accepted']> {
  return { reason, originally, ...(by === undefined ? {} : { by }), ...(until === undefined ? {} : { until }) };
}

function fixRow({ kind, title, changes }: Fix, places: Places): FixRow {
  const place = (uri: string, offset: number): OffsetPlace => ({ ...places.placeOf(uri, offset), offset });
  return {
    kind,
    title,
    changes: changes.map(({ uri, edits }) => ({ path: places.pathOf(uri), edits: edits.map(({ span, text }) => ({ start: place(uri, span.start), end: place(uri, span.end), text })) })),
  };
}

function fixesOf({ path, snapshot }: ReadMachine, failed: (failure: Failure) => void): ReadonlyMap<Diagnostic, Fix[]> {
  const byDiagnostic = new Map<Diagnostic, Fix[]>();
  try {
    for (const fix of fixesAt(snapshot, { start: 0, end: snapshot.document.text.length }, ['spelling', 'remedy'])) {
      byDiagnostic.set(fix.diagnostic, [...(byDiagnostic.get(fix.diagnostic) ?? []), fix]);
    }
  } catch (error) {
    failed({ path, message: faultText('searched for fixes', error) });
  }
  return byDiagnostic;
}
