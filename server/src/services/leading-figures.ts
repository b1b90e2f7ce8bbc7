/** What one looks for first in each element, in this order, whatever its margin. Other figures follow by how they stand. */
const LEADING: Readonly<Record<string, readonly string[]>> = {
  axis: ['drive.holding-verdict', 'motor.torque-margin', 'screw.whirl-use', 'screw.buckling-factor', 'axis.speed-limit'],
  drive: ['drive.holding-verdict', 'motor.torque-margin', 'screw.whirl-use', 'screw.buckling-factor'],
  screw: ['drive.holding-verdict', 'screw.whirl-use', 'screw.buckling-factor', 'screw.efficiency'],
  nut: ['nut.pressure', 'nut.heat-use', 'nut.static-safety', 'nut.life-hours', 'nut.lost-motion'],
  motor: ['motor.torque-margin', 'motor.corner-speed', 'motor.available-torque', 'motor.speed', 'motor.current-use'],
  coupling: ['coupling.torque-use'],
};

/** The place of a figure among those that lead its element; undefined for one that does not. */
export function leadingPlace(figure: string, scope: string): number | undefined {
  const place = LEADING[scope]?.indexOf(figure) ?? -1;
  return place < 0 ? undefined : place;
}
