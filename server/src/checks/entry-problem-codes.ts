/** Codes of problems with what is written about findings and checks: accepted deviations, settings of a repository. Stable once released. */
export const entryProblemCodes = {
  'check-unknown': {
    title: 'A check that there is not',
    explanation:
      'An accepted deviation, or a setting, names a check by the identifier that stands behind its findings, such as "nut-wears-out". There is none of this name, so the entry has no effect. The fix offers the nearest names.',
  },
  'not-acceptable': {
    title: 'A problem that cannot be accepted',
    explanation:
      'What is wrong with the text itself (its syntax, its units, a name that leads nowhere) leaves open what is meant, and everything that depends on it stays uncomputed. It is mended, not accepted. Findings about the design can be accepted with a reason.',
  },
  'accepted-nothing': {
    title: 'An accepted deviation that no finding needs',
    explanation:
      'No finding of this check stands at this place any more, or none ever did: the design has changed, or the place is another. Take the entry out, so that it does not hide a finding of later days; or mend its place.',
  },
  'accepted-nowhere': {
    title: 'An accepted deviation at a place that there is not',
    explanation:
      'The place is written as the keys that lead to it from the top of the file, with "/" between them: "axes/lift/drive/nut". One of these keys is not there, so nothing is accepted.',
  },
  'reason-not-told': {
    title: 'An accepted deviation without a reason',
    explanation: 'Where the reason should stand there is only what was put there to be replaced. Until the reason is written, nothing is accepted, and the finding keeps its gravity.',
  },
  'date-impossible': {
    title: 'A date that there is not',
    explanation: 'A date is written as year, month and day, "2027-06-30", and has to be in the calendar. Until it is, the deviation is not accepted.',
  },
  'limit-not-changeable': {
    title: 'A limit that settings cannot change',
    explanation:
      'Settings of a repository may move limits, and change the gravity of findings, that rest on common practice or on thresholds of our own. A limit that comes from a standard, from a book or from the mechanics, and everything where people can be hurt, stays as it is. A single such finding can be accepted with a reason, in the description that it is about.',
  },
  'limit-not-understood': {
    title: 'A limit that cannot be read',
    explanation: 'The limit of a check is a number in the unit of the figure that it judges, such as "40 %" or "12". A check that has no figure, or whose limit is written in the description, has no limit that could be set here.',
  },
  'display-unit-unfit': {
    title: 'A unit in which this cannot be shown',
    explanation: 'Every kind of quantity is shown in a unit of its own kind: lengths in mm or in, forces in N or lbf. The unit is not known, or measures something else.',
  },
} as const;

export type EntryProblemCode = keyof typeof entryProblemCodes;
