import type { RecordedFinding } from '../record/finding-rows.ts';

/** What became of one finding. */
export interface FindingChange {
  readonly change: 'new' | 'gone' | 'graver' | 'milder' | 'accepted' | 'changed';
  readonly before?: RecordedFinding;
  readonly after?: RecordedFinding;
}

const GRAVITY = { error: 0, warning: 1, information: 2, hint: 3 } as const;

/** How two findings may be taken for the same, most telling first. Of engineering checks a subject has one finding each, wherever it points. */
const SAMENESS: readonly ((finding: RecordedFinding) => string | undefined)[] = [
  ({ code, subject, place, message }) => JSON.stringify([code, subject, place, message]),
  ({ code, subject, place }) => JSON.stringify([code, subject, place]),
  ({ code, subject }) => (subject === '' ? undefined : JSON.stringify([code, subject])),
  // What two axes that share a drive both find is told by the one for which it is graver.
  ({ code, subject, place }) => (subject === '' ? undefined : JSON.stringify([code, place])),
  // A problem of the text whose entry has moved.
  ({ code, subject, message }) => (subject === '' ? JSON.stringify([code, message]) : undefined),
];

/** Findings that are new, gone or different: new ones and changed ones in the order of the new text, then those that are gone. */
export function compareFindings(before: readonly RecordedFinding[], after: readonly RecordedFinding[]): readonly FindingChange[] {
  const left = new Set(before);
  const partner = new Map<RecordedFinding, RecordedFinding>();
  for (const sameness of SAMENESS) {
    const waiting = new Map<string, RecordedFinding[]>();
    for (const finding of left) {
      const key = sameness(finding);
      if (key !== undefined) waiting.set(key, [...(waiting.get(key) ?? []), finding]);
    }
    for (const finding of after) {
      const key = partner.has(finding) ? undefined : sameness(finding);
      const found = key === undefined ? undefined : waiting.get(key)?.shift();
      if (!found) continue;
      partner.set(finding, found);
      left.delete(found);
    }
  }
  return [
    ...after.flatMap((finding): readonly FindingChange[] => {
      const was = partner.get(finding);
      if (!was) return [{ change: 'new', after: finding }];
      const change = kindOf(was, finding);
      return change === undefined ? [] : [{ change, before: was, after: finding }];
    }),
    ...before.filter((finding) => left.has(finding)).map((finding): FindingChange => ({ change: 'gone', before: finding })),
  ];
}

function kindOf(was: RecordedFinding, is: RecordedFinding): FindingChange['change'] | undefined {
  if (was.accepted === undefined && is.accepted !== undefined) return 'accepted';
  const [old, fresh] = [GRAVITY[was.severity], GRAVITY[is.severity]];
  if (fresh !== old) return fresh < old ? 'graver' : 'milder';
  return was.message === is.message ? undefined : 'changed';
}
