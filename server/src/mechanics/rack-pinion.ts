/**
 * A straight or helical rack and its pinion: involute teeth of standard height (addendum one module), no profile shift.
 * Module and pressure angle are those of the normal section, as stamped on the rack.
 */
import { requireNotNegative, requirePositive, requireWhole } from './require-argument.ts';
import { requireWithin } from './require-within.ts';

export interface RackMesh {
  /** m_n, m, above 0. */
  readonly module: number;
  /** z of the pinion, a whole number of at least 5. */
  readonly teeth: number;
  /** α_n in rad, above 0 and below 45°; 20° as a rule. */
  readonly pressureAngle: number;
  /** β in rad, 0 for straight teeth, below 45°. */
  readonly helixAngle: number;
}

function requireMesh(mesh: RackMesh): void {
  requirePositive('module', mesh.module);
  requireWhole('teeth', mesh.teeth, 5);
  requirePositive('pressureAngle', mesh.pressureAngle);
  requireWithin('pressureAngle', mesh.pressureAngle, 0, Math.PI / 4);
  requireWithin('helixAngle', mesh.helixAngle, 0, Math.PI / 4);
}

/**
 * Pressure angle in the plane of turning.
 *
 * Formula: tan α_t = tan α_n / cos β.
 * @param mesh see `RackMesh`.
 * @returns α_t in rad.
 * @throws RangeError when a value is outside its domain.
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 13-10.
 * Checked against: test/mechanics/rack-pinion.test.ts.
 */
export function transversePressureAngle(mesh: RackMesh): number {
  requireMesh(mesh);
  return Math.atan(Math.tan(mesh.pressureAngle) / Math.cos(mesh.helixAngle));
}

/**
 * Radius of the pitch circle, which rolls on the pitch line of the rack.
 *
 * Formula: r = m_n z / (2 cos β).
 * @param mesh see `RackMesh`.
 * @returns r in m.
 * @throws RangeError when a value is outside its domain.
 * Source: Budynas and Nisbett, sections 13-1 and 13-10; ISO 21771.
 * Checked against: test/mechanics/rack-pinion.test.ts.
 */
export function pitchRadius(mesh: RackMesh): number {
  requireMesh(mesh);
  return (mesh.module * mesh.teeth) / (2 * Math.cos(mesh.helixAngle));
}

/**
 * Travel of the rack for one turn of the pinion.
 *
 * Formula: p = π m_n z / cos β, the circumference of the pitch circle.
 * @param mesh see `RackMesh`.
 * @returns p in m.
 * @throws RangeError when a value is outside its domain.
 * Source: kinematics of rolling.
 * Checked against: test/mechanics/rack-pinion.test.ts (z teeth of transverse pitch).
 */
export function travelPerPinionTurn(mesh: RackMesh): number {
  return 2 * Math.PI * pitchRadius(mesh);
}

/** Forces between the teeth, in N. */
export interface ToothForces {
  /** F_t, along the travel. */
  readonly tangential: number;
  /** F_r, pushes pinion and rack apart. */
  readonly separating: number;
  /** F_a, along the shaft of the pinion; 0 with straight teeth. */
  readonly axial: number;
  /** F_n, square to the flank. */
  readonly normal: number;
  /** Load across the shaft that its bearings take: F_t and F_r together. */
  readonly radialOnShaft: number;
}

/**
 * Forces of the mesh for a force along the travel.
 *
 * Formula: F_r = F_t tan α_n / cos β; F_a = F_t tan β; F_n = F_t / (cos α_n cos β).
 * @param mesh see `RackMesh`.
 * @param tangential F_t in N, 0 or above.
 * @returns forces in N, tooth friction left out.
 * @throws RangeError when a value is outside its domain.
 * Source: Budynas and Nisbett, sections 13-14 and 13-16 (equations 13-35 to 13-40).
 * Checked against: Budynas and Nisbett, example 13-9 (test/published/racks.test.ts); force balance (test/mechanics/rack-pinion.test.ts).
 */
export function toothForces(mesh: RackMesh, tangential: number): ToothForces {
  requireMesh(mesh);
  requireNotNegative('tangential force', tangential);
  const separating = (tangential * Math.tan(mesh.pressureAngle)) / Math.cos(mesh.helixAngle);
  const axial = tangential * Math.tan(mesh.helixAngle);
  const normal = tangential / (Math.cos(mesh.pressureAngle) * Math.cos(mesh.helixAngle));
  return { tangential, separating, axial, normal, radialOnShaft: Math.hypot(tangential, separating) };
}

/**
 * Fewest teeth that a rack-shaped cutter, or the rack itself, does not undercut.
 *
 * Formula: z_min = 2 cos β / sin² α_t.
 * @param pressureAngle α_n in rad, above 0 and below 45°.
 * @param helixAngle β in rad, 0 to below 45°.
 * @returns z_min, not rounded: 17.1 for 20° and straight teeth. A sixth fewer is usual practice, where a slight undercut is accepted.
 * @throws RangeError when a value is outside its domain.
 * Source: Budynas and Nisbett, section 13-7, equation (13-13) with k = 1; DIN 3960 for the sixth (from memory).
 * Checked against: 18 teeth at 20°, 32 at 14.5°, 12 at 25° (Budynas and Nisbett, section 13-7; test/published/racks.test.ts).
 */
export function leastTeethWithoutUndercut(pressureAngle: number, helixAngle: number): number {
  const transverse = transversePressureAngle({ module: 1, teeth: 5, pressureAngle, helixAngle });
  return (2 * Math.cos(helixAngle)) / Math.sin(transverse) ** 2;
}

/**
 * How many teeth carry on average: contact ratio of pinion and rack.
 *
 * Formula: ε = ε_α + ε_β; ε_α = [√(r_a² − r_b²) − r sin α_t + m_n/sin α_t] / (π m_t cos α_t), ε_β = b sin β/(π m_n); r_a = r + m_n, r_b = r cos α_t.
 * On the side of the rack the contact cannot begin before the line of action touches the base circle, at r sin α_t: there an undercut pinion ends. What the undercut itself cuts off beyond it is left out.
 * @param mesh see `RackMesh`.
 * @param faceWidth b in m, the narrower of the two, above 0.
 * @returns ε; below 1 the motion passes from tooth to tooth with a knock, 1.2 is usually wanted.
 * @throws RangeError when a value is outside its domain.
 * Source: Budynas and Nisbett, section 13-6; ISO 21771 for helical teeth.
 * Checked against: test/independent/rack-meshing.test.ts (flanks brought to touch numerically).
 */
export function contactRatio(mesh: RackMesh, faceWidth: number): number {
  requirePositive('faceWidth', faceWidth);
  const angle = transversePressureAngle(mesh);
  const radius = pitchRadius(mesh);
  const leaving = Math.sqrt((radius + mesh.module) ** 2 - (radius * Math.cos(angle)) ** 2) - radius * Math.sin(angle);
  const arriving = Math.min(mesh.module / Math.sin(angle), radius * Math.sin(angle));
  const basePitch = ((Math.PI * mesh.module) / Math.cos(mesh.helixAngle)) * Math.cos(angle);
  return (leaving + arriving) / basePitch + (faceWidth * Math.sin(mesh.helixAngle)) / (Math.PI * mesh.module);
}

/** Lewis form factor Y for full-depth teeth of 20°, by number of teeth: Budynas and Nisbett, table 14-2 (from memory). */
const FORM_FACTORS: readonly (readonly [teeth: number, factor: number])[] = [
  [12, 0.245], [13, 0.261], [14, 0.277], [15, 0.29], [16, 0.296], [17, 0.303], [18, 0.309], [19, 0.314], [20, 0.322], [21, 0.328], [22, 0.331], [24, 0.337], [26, 0.346],
  [28, 0.353], [30, 0.359], [34, 0.371], [38, 0.384], [43, 0.397], [50, 0.409], [60, 0.422], [75, 0.435], [100, 0.447], [150, 0.46], [300, 0.472], [400, 0.48],
];

/** Form factor of the straight tooth of a rack: the same table. */
export const RACK_FORM_FACTOR = 0.485;

/**
 * Lewis form factor of a pinion tooth.
 *
 * Formula: table over the number of teeth, straight lines between; helical teeth by z/cos³β. Below 12 teeth 0.154 π − 0.912 π/z. Below 20° it falls in a straight line to the 14.5° teeth, π (0.124 − 0.684/z); above 20° the value at 20° is kept, the cautious side.
 * @param mesh see `RackMesh`; the pressure angle at least 14.5°.
 * @returns Y, without unit.
 * @throws RangeError when a value is outside its domain.
 * Source: Budynas and Nisbett, table 14-2 (20°, from memory); Buckingham's straight-line forms, as in Khurmi and Gupta, A Textbook of Machine Design, chapter 28 (from memory).
 * Checked against: the two sources against each other (test/published/racks.test.ts).
 */
export function lewisFormFactor(mesh: RackMesh): number {
  requireMesh(mesh);
  const steep = (20 * Math.PI) / 180;
  const flat = (14.5 * Math.PI) / 180;
  if (mesh.pressureAngle < flat - 1e-9) throw new RangeError('pressureAngle must be at least 14.5° for the form factor');
  const teeth = mesh.teeth / Math.cos(mesh.helixAngle) ** 3;
  const at20 = fullDepthFactor(teeth);
  if (mesh.pressureAngle >= steep) return at20;
  const at14 = Math.min(at20, Math.PI * Math.max(0.124 - 0.684 / teeth, 0.02));
  return at14 + ((at20 - at14) * (mesh.pressureAngle - flat)) / (steep - flat);
}

function fullDepthFactor(teeth: number): number {
  const rows = FORM_FACTORS;
  const above = rows.findIndex(([z]) => z >= teeth);
  // Fewer teeth than the table has: the straight-line form, tied to the first row so that there is no step.
  if (above === 0) return Math.max(0.02, Math.PI * (0.154 - 0.912 / teeth) * (0.245 / (Math.PI * (0.154 - 0.912 / 12))));
  if (above < 0) return 0.48;
  const [z1, y1] = rows[above - 1] as readonly [number, number];
  const [z2, y2] = rows[above] as readonly [number, number];
  return y1 + ((y2 - y1) * (teeth - z1)) / (z2 - z1);
}

/**
 * How much more a running tooth is loaded than a standing one.
 *
 * Formula: K_v = (6.1 + v)/6.1, v in m/s, for cut or milled teeth.
 * @param speed v at the pitch line, m/s, 0 or above.
 * @returns K_v, 1 at rest.
 * @throws RangeError for a negative speed.
 * Source: Barth, in Budynas and Nisbett, section 14-1, equation (14-6b).
 * Checked against: Budynas and Nisbett, example 14-1 (test/published/racks.test.ts).
 */
export function barthVelocityFactor(speed: number): number {
  requireNotNegative('speed', speed);
  return (6.1 + speed) / 6.1;
}

/**
 * Bending stress at the root of a tooth, as Lewis reckons it: the whole force on one tooth, at its tip.
 *
 * Formula: σ = K_v F_t / (b m_n Y).
 * @param tangential F_t in N, 0 or above.
 * @param faceWidth b in m, the narrower of the two, above 0.
 * @param module m_n in m, above 0.
 * @param formFactor Y, above 0; `RACK_FORM_FACTOR` for the rack.
 * @param velocityFactor K_v, at least 1.
 * @returns σ in Pa. Notch effect and load sharing are left out: they work against each other, and neither is known here.
 * @throws RangeError when a value is outside its domain.
 * Source: Lewis; Budynas and Nisbett, section 14-1, equation (14-8).
 * Checked against: Budynas and Nisbett, example 14-1 (test/published/racks.test.ts).
 */
export function lewisStress(tangential: number, faceWidth: number, module: number, formFactor: number, velocityFactor = 1): number {
  requireNotNegative('tangential force', tangential);
  requirePositive('faceWidth', faceWidth);
  requirePositive('module', module);
  requirePositive('formFactor', formFactor);
  if (!(velocityFactor >= 1)) throw new RangeError(`velocityFactor must be at least 1, got ${velocityFactor}`);
  return (velocityFactor * tangential) / (faceWidth * module * formFactor);
}

/**
 * Travel that a twist of the pinion makes: play, lag or error of everything before it, seen at the rack.
 *
 * Formula: x = φ r.
 * @param mesh see `RackMesh`.
 * @param twist φ in rad, 0 or above.
 * @returns x in m.
 * @throws RangeError when a value is outside its domain.
 * Source: kinematics of rolling.
 * Checked against: test/mechanics/rack-pinion.test.ts.
 */
export function travelOfTwist(mesh: RackMesh, twist: number): number {
  requireNotNegative('twist', twist);
  return twist * pitchRadius(mesh);
}

/**
 * Play along the travel that a gap between pinion and rack opens.
 *
 * Formula: j = 2 Δa tan α_t: each flank stands back by Δa tan α_t.
 * @param mesh see `RackMesh`.
 * @param gap Δa, by how much the pinion stands farther off than its pitch circle asks, m, 0 or above.
 * @returns whole play j in m.
 * @throws RangeError when a value is outside its domain.
 * Source: geometry of the straight flank of the rack.
 * Checked against: test/independent/rack-meshing.test.ts.
 */
export function playFromGap(mesh: RackMesh, gap: number): number {
  requireNotNegative('gap', gap);
  return 2 * gap * Math.tan(transversePressureAngle(mesh));
}

/**
 * Error along the travel of a pinion that sits off its axis, once per turn.
 *
 * Formula: amplitude e/cos α_t. The flank moves along the line of action by e sin(θ ± α_t), and the rack by 1/cos α_t of that.
 * @param mesh see `RackMesh`.
 * @param eccentricity e, half of the run-out, m, 0 or above.
 * @returns amplitude in m, the same to either side. It turns over with the flank that carries: after a reversal it is shifted by 2 α_t.
 * @throws RangeError when a value is outside its domain.
 * Source: an involute moves its rack by the path of its base circle's centre along the line of action; derived.
 * Checked against: test/independent/rack-meshing.test.ts (a displaced involute brought to touch numerically).
 */
export function eccentricityError(mesh: RackMesh, eccentricity: number): number {
  requireNotNegative('eccentricity', eccentricity);
  return eccentricity / Math.cos(transversePressureAngle(mesh));
}

/** Mesh stiffness of steel teeth, N/m per metre of width: 20 N/(mm µm) where more than one pair carries. */
export const STEEL_MESH_STIFFNESS = 20e9;
/** Young's modulus to which it belongs, Pa. */
const STEEL_MODULUS = 206e9;

/**
 * Stiffness between pinion and rack along the travel.
 *
 * Formula: k = c_γ b · (E/E_steel) · cos² α, E = 2 E₁ E₂/(E₁ + E₂).
 * @param faceWidth b in m, the narrower, above 0.
 * @param pinionModulus E₁ in Pa, above 0.
 * @param rackModulus E₂ in Pa, above 0.
 * @param pressureAngle α in rad, from 0 and below 45°.
 * @returns k in N/m at a full load on the teeth. Lightly loaded, uneven teeth are a third to a half as stiff.
 * @throws RangeError when a value is outside its domain.
 * Source: ISO 6336-1, mesh stiffness of 20 N/(mm µm) for steel gears and its scaling with the moduli (from memory).
 * Checked against: test/mechanics/rack-pinion.test.ts.
 */
export function meshStiffness(faceWidth: number, pinionModulus: number, rackModulus: number, pressureAngle: number): number {
  requirePositive('faceWidth', faceWidth);
  requirePositive('pinionModulus', pinionModulus);
  requirePositive('rackModulus', rackModulus);
  requireWithin('pressureAngle', pressureAngle, 0, Math.PI / 4);
  const modulus = (2 * pinionModulus * rackModulus) / (pinionModulus + rackModulus);
  return STEEL_MESH_STIFFNESS * faceWidth * (modulus / STEEL_MODULUS) * Math.cos(pressureAngle) ** 2;
}
