import type { Diagnostic as Message, DiagnosticTag } from 'vscode-languageserver';
import type { Diagnostic, Location } from '../services/diagnostics.ts';
import type { Snapshot } from '../services/snapshot.ts';
import type { Client } from './client.ts';
import { rangeOf, type Lines } from './positions.ts';

/** Whose findings they are, as the editor tells. */
export const source = 'axiswright';

/** The address of a check's page; undefined where there is none that the client could open. */
export type PageAddress = (id: string) => string | undefined;

/** The numbers that the protocol has for them. */
const severities = { error: 1, warning: 2, information: 3, hint: 4 } as const;
const faded: typeof DiagnosticTag.Unnecessary = 1;

/** At most so many places stand below a finding. */
const MOST_RELATED = 4;

/** A finding as the client is told it: plain text, and no more than the client understands. */
export function messageOf(diagnostic: Diagnostic, snapshot: Snapshot, client: Client, pageAddress: PageAddress): Message {
  const { code, span, severity, message, related, unnecessary } = diagnostic;
  const page = client.codeDescriptions ? pageAddress(code) : undefined;
  const places = client.relatedPlaces ? related.slice(0, MOST_RELATED) : [];
  return {
    range: rangeOf(snapshot.document.lines, span),
    severity: severities[severity],
    code,
    ...(page === undefined ? {} : { codeDescription: { href: page } }),
    source,
    message,
    ...(unnecessary === true && client.unnecessaryTag ? { tags: [faded] } : {}),
    ...(places.length === 0 ? {} : { relatedInformation: places.map((place) => ({ location: locationOf(place, snapshot), message: place.message })) }),
  };
}

export const locationOf = ({ uri, span }: Location, snapshot: Snapshot): { uri: string; range: Message['range'] } => ({ uri, range: rangeOf(linesOf(uri, snapshot), span) });

/** The lines of a document of a snapshot: of its own, or of one of its part lists. */
export function linesOf(uri: string, { document, lists }: Snapshot): Lines {
  return (lists.find((list) => list.uri === uri) ?? document).lines;
}

/** Said in place of all findings when the analysis itself failed: silence would read as "nothing wrong". */
export const faultMessage: Message = {
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: severities.information,
  source,
  message: 'This file could not be analysed. This is a fault of the tool: please report it with this file.',
};
