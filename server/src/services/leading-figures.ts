/** What one looks for first in each element, in this order, whatever its margin. Other figures follow by how they stand. */
const LEADING: Readonly<Record<string, readonly string[]>> = {
  axis: ['drive.holding-verdict', 'motor.torque-margin', 'motor.stall-verdict', 'screw.whirl-use', 'screw.buckling-factor', 'belt.tension-use', 'axis.resonance', 'axis.speed-limit'],
  drive: ['drive.holding-verdict', 'drive.broken-belt-verdict', 'motor.torque-margin', 'motor.stall-verdict', 'screw.whirl-use', 'screw.buckling-factor', 'belt.tension-use', 'axis.resonance'],
  screw: ['drive.holding-verdict', 'screw.whirl-use', 'screw.buckling-factor', 'screw.efficiency'],
  nut: ['nut.pressure', 'nut.heat-use', 'nut.static-safety', 'nut.life-hours', 'nut.lost-motion'],
  motor: ['motor.torque-margin', 'motor.corner-speed', 'motor.available-torque', 'motor.speed', 'motor.current-use'],
  belt: ['belt.tension-use', 'belt.slack-factor', 'belt.strum-frequency-near', 'belt.strum-frequency-far', 'belt.span-stiffness-least', 'belt.strain-use'],
  pulley: ['pulley.teeth-in-mesh', 'pulley.pitch-diameter', 'drive.travel-per-shaft-turn'],
  rack: ['rack.lost-motion', 'rack.position-error'],
  pinion: ['pinion.stress-use', 'drive.travel-per-shaft-turn'],
  layout: ['layout.diagonal-margin'],
  supports: ['supports.redundant-held', 'supports.freedoms-drives-held', 'supports.growth-jam-force', 'supports.reaction-least-in-use', 'supports.reaction-most-in-use', 'supports.distance-to-edge-in-use'],
  levelling: ['levelling.held', 'levelling.largest-move', 'levelling.rounds', 'levelling.tilt-range', 'levelling.height-range', 'levelling.kept-unpowered', 'levelling.range-use', 'levelling.coarseness', 'levelling.slope-per-step'],
  coupling: ['coupling.torque-use'],
  frame: ['frame.looseness', 'frame.first-frequency', 'frame.ringing', 'frame.ringing-use', 'frame.racking-stiffness', 'frame.give-x', 'frame.give-y', 'frame.give-z'],
  'frame-box': ['frame-box.sway-frequency-x', 'frame-box.sway-frequency-y', 'frame-box.tipping-use', 'frame-box.walking-use'],
  'frame-gantry': ['frame-gantry.sag-variation', 'frame-gantry.tool-tilt', 'frame-gantry.first-frequency'],
  guides: ['guides.sag-variation', 'guides.jamming-ratio', 'guides.static-safety', 'guides.life-travel', 'guides.sag-use', 'guides.bushing-angle-use', 'guides.carriage-load-most'],
};

/** What is to be done, told before the table: the first of these figures that is there says it in its note. */
const TO_DO: Readonly<Record<string, { readonly title: string; readonly figures: readonly string[] }>> = {
  levelling: { title: 'To level it', figures: ['levelling.rounds', 'levelling.largest-move'] },
};

/** What is to be done about an element, with the figures whose notes say it; undefined for one about which nothing is. */
export const toDoAbout = (scope: string): { readonly title: string; readonly figures: readonly string[] } | undefined => TO_DO[scope];

/** The place of a figure among those that lead its element; undefined for one that does not. */
export function leadingPlace(figure: string, scope: string): number | undefined {
  const place = LEADING[scope]?.indexOf(figure) ?? -1;
  return place < 0 ? undefined : place;
}
