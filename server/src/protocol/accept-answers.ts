import { outdated } from './fence.ts';
import { editOf, findDiagnostics, ticketIn } from './fix-answers.ts';
import type { Desk } from './desk.ts';
import { fieldsOf, textIn } from './parameters.ts';

/** What our own extension asks once the person has given the reason: the edit that accepts a finding. */
export function answerAccept(desk: Desk): void {
  desk.fence.request<unknown>('axiswright/accept', null, async (params, token) => {
    const { reason, by, until, finding } = fieldsOf(params);
    const ticket = ticketIn(finding);
    const why = textIn(reason)?.trim() ?? '';
    const asked = ticket && why !== '' ? await desk.open(ticket.uri, token) : undefined;
    if (!ticket || !asked) return null;
    const { analysis, snapshot } = asked;
    const [diagnostic, ...others] = findDiagnostics(ticket, asked).filter((one) => analysis.canBeAccepted(one, snapshot));
    if (!diagnostic || others.length > 0) throw outdated('The text has changed since this was offered. Ask for the fixes again.');
    const last = textIn(until);
    const edits = analysis.acceptanceEdits(diagnostic, snapshot, {
      reason: why,
      ...(textIn(by) === undefined ? {} : { by: textIn(by) ?? '' }),
      ...(last === undefined || last === '' ? {} : { until: last }),
    });
    return edits ? { edit: editOf([{ uri: snapshot.uri, edits }], asked, desk) } : null;
  });
}
