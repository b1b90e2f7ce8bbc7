import { analyse, type Analysis } from '../../server/src/checks/analysis.ts';
import { severityRank, type Finding } from '../../server/src/checks/judge.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import type { DocumentSet } from '../../server/src/remedies/prove.ts';
import { remediesFor } from '../../server/src/remedies/registry.ts';
import type { Proven } from '../../server/src/remedies/prove.ts';

export const uri = 'file:///remedy.machine.yaml';

export interface Analysed {
  readonly documents: DocumentSet;
  readonly analysis: Analysis;
}

/** A fresh reading and analysis that shares nothing with any other. */
export function analyseText(text: string): Analysed {
  const main = readDocument(uri, text);
  return { documents: { main, lists: [] }, analysis: analyse(main, []) };
}

export const grave = (analysis: Analysis): readonly Finding[] => analysis.findings.filter((finding) => severityRank(finding.severity) <= severityRank('warning'));

export const cures = (finding: Finding, { documents, analysis }: Analysed): readonly Proven[] => remediesFor(finding, documents, analysis);

export const textAfter = (proven: Proven): string => proven.texts.get(uri) ?? '';

export const name = (finding: Finding): string => `${finding.check} (${finding.severity})`;
