import { cautionText } from '../../checks/judge.ts';
import type { CautionId } from '../../checks/cautions.ts';
import { allChecks } from '../../checks/registry.ts';
import type { Source } from '../../figures/figure.ts';
import type { Severity } from '../../language/problems.ts';
import type { Diagnostic } from '../diagnostics.ts';
import type { FigureRow, LimitRow } from '../figures-table.ts';
import type { Snapshot } from '../snapshot.ts';
import { acceptanceOf, type Acceptance } from './acceptances.ts';

/** A finding of any kind as the record and the comparison tell it: by the path of its entry, which outlives edits elsewhere in the text. */
export interface RecordedFinding {
  readonly code: string;
  readonly severity: Severity;
  /** What it is about, such as `axes/lift/drive`; empty for a problem of the text. */
  readonly subject: string;
  /** Keys joined by "/", empty for the text as a whole. */
  readonly place: string;
  readonly message: string;
  readonly cautions: readonly CautionId[];
  /** On what the limit rests; undefined for a problem of the text. */
  readonly basis?: string;
  readonly sources: readonly Source[];
  /** The deviation by which it is accepted. */
  readonly accepted?: Acceptance;
  /** The figure compared, its deciding end and the limit that it breaks, in SI. */
  readonly figure?: string;
  readonly worst?: number;
  readonly limit?: number;
}

/** All findings of a snapshot in the order of the text. `figures` are its rows, from which the limits' sources are taken. */
export function recordedFindings(snapshot: Snapshot, figures: readonly FigureRow[]): readonly RecordedFinding[] {
  return snapshot.diagnostics.map((diagnostic) => recorded(diagnostic, snapshot, figures));
}

function recorded(diagnostic: Diagnostic, { document }: Snapshot, figures: readonly FigureRow[]): RecordedFinding {
  const { finding, code, severity } = diagnostic;
  const accepted = acceptanceOf(diagnostic, document.root);
  const told = new Set((finding?.cautions ?? []).map((caution) => `Caution: ${cautionText(caution)}`));
  return {
    code,
    severity,
    subject: finding?.subject ?? '',
    place: (finding ? finding.place.path : document.pathAt(diagnostic.span.start).path).join('/'),
    // The hazards are named by their own sentences elsewhere.
    message: diagnostic.message.split('\n').filter((sentence) => !told.has(sentence)).join(' '),
    cautions: finding?.cautions ?? [],
    ...restsOn(diagnostic, figures),
    ...(accepted === undefined ? {} : { accepted }),
    ...(finding?.figure === undefined ? {} : { figure: finding.figure }),
    ...(finding?.worst === undefined || finding.limit === undefined || !Number.isFinite(finding.worst) ? {} : { worst: finding.worst, limit: finding.limit }),
  };
}

/** The basis and the sources of the limit that was broken, or of the check as a whole where it compares no figure. */
function restsOn({ code, finding }: Diagnostic, figures: readonly FigureRow[]): Pick<RecordedFinding, 'basis' | 'sources'> {
  const check = finding && allChecks().find((one) => one.id === code);
  if (!check) return { sources: [] };
  if ('judge' in check) return { basis: check.basis, sources: check.sources };
  const row = figures.find((one) => one.id === check.figure && one.subject === finding.subject);
  const limits = (row?.limits ?? []).filter((limit) => limit.check === code);
  const broken = limits.find((limit) => limit.state !== 'kept') ?? limits[0];
  return broken ? { basis: broken.basis, sources: sourcesOf(broken) } : { sources: [] };
}

const sourcesOf = ({ source }: LimitRow): readonly Source[] => (source ? [source] : []);
