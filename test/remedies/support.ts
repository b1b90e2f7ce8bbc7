import { analyse, type Analysis } from '../../server/src/checks/analysis.ts';
import { severityRank, type Finding } from '../../server/src/checks/judge.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { allOf, carryOut, type DocumentSet, type Proven } from '../../server/src/remedies/prove.ts';
import { remediesFor } from '../../server/src/remedies/registry.ts';

export const uri = 'file:///remedy.machine.yaml';
export const listUri = 'file:///shop/stock.parts.yaml';

export interface Analysed {
  readonly documents: DocumentSet;
  readonly analysis: Analysis;
}

/** A fresh reading and analysis that shares nothing with any other. */
export function analyseText(text: string, list?: string): Analysed {
  const main = readDocument(uri, text);
  const lists = list === undefined ? [] : [readDocument(listUri, list)];
  return { documents: { main, lists }, analysis: analyse(main, lists) };
}

/** Errors and warnings. */
export const grave = (analysis: Analysis): readonly Finding[] => analysis.findings.filter((finding) => severityRank(finding.severity) <= severityRank('warning'));

/** The gravest first, as a person would mend them. */
export const inOrder = (findings: readonly Finding[]): readonly Finding[] => [...findings].sort((a, b) => severityRank(a.severity) - severityRank(b.severity));

export const cures = (finding: Finding, { documents, analysis }: Analysed): readonly Proven[] => remediesFor(finding, documents, analysis);

/** The machine's own text after a remedy; the text before where only a part list has changed. */
export const textAfter = (proven: Proven, { documents }: Analysed): string => proven.texts.get(uri) ?? documents.main.text;

/** Everything read and analysed afresh after a remedy. */
export function analysedAfter(proven: Proven, before: Analysed): Analysed {
  const [list] = before.documents.lists;
  return analyseText(textAfter(proven, before), list && (proven.texts.get(list.uri) ?? list.text));
}

/** The texts after carrying a remedy's changes out once more, by URI. */
export function again(proven: Proven, after: Analysed): ReadonlyMap<string, string> {
  const twice = carryOut(proven.changes, after.documents);
  return new Map((twice ? allOf(twice) : []).map((document) => [document.uri, document.text]));
}

export const name = (finding: Finding): string => `${finding.check} (${finding.severity})`;
