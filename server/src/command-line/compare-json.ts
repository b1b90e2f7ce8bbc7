import { version } from '../../../package.json';
import type { FigureRow } from '../services/figures-table.ts';
import { valueText } from '../services/compare/change-texts.ts';
import type { FigureChange } from '../services/compare/figure-changes.ts';
import type { Worsening } from '../services/compare/worsening.ts';
import type { RecordedFinding } from '../services/record/finding-rows.ts';
import type { Compared } from './compare-report.ts';
import type { Failure } from './find-files.ts';

/** Version of the shape below, described by schemas/comparison-1.schema.json; rises with every change that breaks a reader. */
export const comparisonShape = 'comparison-1';

export interface ComparisonRun {
  readonly status: number;
  readonly allowed: { readonly failOn: string; readonly marginLoss?: number };
  readonly since?: string;
  readonly unchanged: readonly string[];
  readonly failures: readonly Failure[];
  readonly unmatched: readonly string[];
}

/** What `compare --format json` prints. */
export function comparisonJson(compared: readonly Compared[], run: ComparisonRun): string {
  const { status, allowed, since, unchanged, failures, unmatched } = run;
  const document = {
    format: comparisonShape,
    tool: { name: 'axiswright', version },
    status,
    allowed,
    ...(since === undefined ? {} : { since }),
    comparisons: compared.map(({ before, after, comparison, worse }) => ({
      before,
      after,
      state: comparison.state,
      worse: worse.map(worseJson),
      findings: comparison.findings.map((change) => ({
        change: change.change,
        ...(change.before ? { before: findingJson(change.before) } : {}),
        ...(change.after ? { after: findingJson(change.after) } : {}),
      })),
      figures: comparison.figures.map(figureJson),
      accepted: comparison.accepted,
      cost: comparison.cost,
    })),
    unchanged,
    failures,
    unmatched,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

function worseJson(worse: Worsening): object {
  return worse.kind === 'finding'
    ? { kind: worse.kind, refused: worse.refused, code: worse.finding.code, subject: worse.finding.subject, place: worse.finding.place }
    : { kind: worse.kind, refused: worse.refused, figure: worse.figure.id, subject: worse.figure.subject, check: worse.margin.check, lost: worse.lost };
}

function findingJson({ code, severity, subject, place, message, accepted, worst, limit, figure }: RecordedFinding): object {
  return {
    code,
    severity,
    ...(subject === '' ? {} : { subject }),
    place,
    message,
    ...(accepted === undefined ? {} : { accepted }),
    ...(figure === undefined ? {} : { figure }),
    ...(worst === undefined ? {} : { worst, limit }),
  };
}

function figureJson({ change, id, subject, before, after, relative, margin }: FigureChange): object {
  const known = after ?? before;
  return {
    change,
    id,
    subject,
    title: known?.title ?? id,
    quantity: known?.quantity ?? '',
    siUnit: known?.siUnit ?? '',
    ...(before ? { before: valueJson(before) } : {}),
    ...(after ? { after: valueJson(after) } : {}),
    ...(relative === undefined ? {} : { relative }),
    ...(margin === undefined ? {} : { margin }),
  };
}

const valueJson = (row: FigureRow): object => ({ ...row.value, text: valueText(row) });
