import type { Diagnostic } from '../services/diagnostics.ts';
import { fixesAt, type Fix } from '../services/fixes.ts';
import type { Failure } from './find-files.ts';
import { faultText, type Places, type ReadMachine } from './read-machines.ts';
import type { TextPlace } from './source-lines.ts';

export type Severity = Diagnostic['severity'];

/** Gravest first. */
export const severities: readonly Severity[] = ['error', 'warning', 'information', 'hint'];

/** A finding as every output shows it. */
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
  readonly fixes: readonly Pick<Fix, 'kind' | 'title'>[];
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
      fixes: (found.get(diagnostic) ?? []).map(({ kind, title }) => ({ kind, title })),
      ...(finding ? { subject: finding.subject, certain: finding.certain } : {}),
      ...(finding?.figure === undefined ? {} : { figure: finding.figure }),
      ...(finding?.worst === undefined || finding.limit === undefined ? {} : { worst: finding.worst, limit: finding.limit }),
    };
  });
  return { machine, findings };
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
