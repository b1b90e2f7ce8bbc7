/** Every code of a problem with names and belonging, with the text of its reference page. Stable once released. */
export const nameProblemCodes = {
  'unknown-name': {
    title: 'A name that leads nowhere',
    explanation:
      'A part, mass, supply, drive option, point of the frame or support of the axis is named that is described nowhere: not in this file, and not in the part lists that it uses. Until the name is right, everything that depends on it stays uncomputed. The fix offers the nearest names.',
  },
  'part-of-wrong-kind': {
    title: 'A part of the wrong kind',
    explanation: 'The name leads to a part, but of another kind than the place needs: a nut where a motor is due, say. Name a part of the right kind, or mend the "kind" of the part.',
  },
  'axis-on-itself': {
    title: 'An axis beside itself',
    explanation: 'A layout of crossed belts joins two different axes, and a gantry carries another axis than its own. Until the other name is right, what they do together stays uncomputed.',
  },
  'member-without-length': {
    title: 'A member without length',
    explanation: 'A member of the frame is a straight bar between two different points. Until the name of its other end is right, the frame stays uncomputed.',
  },
  'area-without-place': {
    title: 'An area without a place',
    explanation: 'An area says how far from its place a mass may lie, so it says nothing where the place is not written. Until it is, nothing is known of how the supports and carriages share the load.',
  },
  'nuts-miscounted': {
    title: 'More or fewer nuts than drive units',
    explanation: 'Each unit of a screw drive has one screw and one nut, and the nuts that hold the moved part stand among its supports. Until there are as many of both, the screws are taken to share the load equally, whatever the places of masses and nuts.',
  },
  'lift-named-twice': {
    title: 'A lift that is named twice',
    explanation: 'Each lift of an axis stands once in the list, in the order of the motors. Until the other one is named, what levelling does stays uncomputed.',
  },
  'lift-holds-no-height': {
    title: 'A lift that is a guide',
    explanation: 'Only what holds the height of the part can change it: a nut, a belt, a ball on a jack. A carriage or bushing on an upright rail or shaft runs along it.',
  },
  'heights-miscounted': {
    title: 'More or fewer heights than lifts',
    explanation: 'One height is measured at each lift, in the order of the lifts. Until there are as many of both, it is not clear which height belongs to which lift.',
  },
  'one-motor-for-all-lifts': {
    title: 'Lifts with motors of their own, and one motor for all',
    explanation: 'Lifts that are moved one by one by their own motors need a motor each, and the drive says that one motor turns all its units. Until one of the two is right, it is not clear whether the part can be levelled.',
  },
  'drive-twice': {
    title: 'Both a drive and drive options',
    explanation: 'An axis has either one "drive", or named "drive-options" with one "chosen-drive". With both it is not clear what is to be built.',
  },
  'no-drive-chosen': {
    title: 'No drive option is chosen',
    explanation: 'All options are computed, but only the chosen one is checked. Name it with "chosen-drive".',
  },
  'axis-moves-nothing': {
    title: 'An axis that moves nothing',
    explanation: 'Without "moves" the load on the axis is unknown, so that holding, torque and life cannot be computed. Describe the bodies under "masses" and name them here.',
  },
  'mass-without-axis': {
    title: 'A mass that no axis moves',
    explanation: 'The body is described but no axis carries it, so it is in no load. Often its name was forgotten under "moves".',
  },
  'unused-part': {
    title: 'A part that nothing uses',
    explanation: 'The part is described but named nowhere in this machine. Harmless; parts shared by several machines can go into a part list.',
  },
  'size-unknown': {
    title: 'A size that is not known',
    explanation:
      'The designation of a screw, of a belt profile or of a motor face is none that can be read, so nothing follows from it. Belts: one of the profiles that completion offers, or leave "profile" out and write "pitch". Screws: a trapezoidal thread such as Tr12x3 or Tr8x8(P2), or diameter and lead of a ball screw in two digits each, such as 1605. For any other screw leave "size" out and write its dimensions: "thread", "major-diameter", "pitch" or "lead", and "root-diameter".',
  },
  'part-list-missing': {
    title: 'A part list that cannot be read',
    explanation: 'A path under "uses" leads to no readable file inside the workspace. Paths are relative to the description, with forward slashes. In a text that was never saved, relative paths lead nowhere: save it first.',
  },
} as const;

export type NameProblemCode = keyof typeof nameProblemCodes;
