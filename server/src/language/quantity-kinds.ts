/** One kind of quantity: what its unit must measure, which units are offered, what can and what usually does occur. */
export interface QuantityKindDetails {
  /** For sentences, after an article: "a length", "a moment of inertia". */
  readonly title: string;
  /** The coherent SI unit, in which values are computed. */
  readonly si: string;
  /** Units that completion and messages offer, in the order in which the trade would think of them: metric, then inch. */
  readonly units: readonly string[];
  /** Units for showing a value: each from a size on, in SI, smallest first. The first takes everything below. */
  readonly shown: readonly { readonly unit: string; readonly from: number }[];
  /** Sizes that machines of this sort have, in SI, without sign; a value outside is asked about. Zero always passes. */
  readonly plausible?: readonly [number, number];
  /** Smallest value that can be, in SI. */
  readonly minimum?: number;
  /** Largest value that can be, in SI. */
  readonly maximum?: number;
  /** A number without a unit is meant. */
  readonly bare?: boolean;
  /** Only whole numbers. */
  readonly whole?: boolean;
  /** Spellings that mean something else in this kind than elsewhere: what is written → what is read. */
  readonly spellings?: Readonly<Record<string, string>>;
}

type Shown = QuantityKindDetails['shown'];

/** `'µm'`, then a size and a unit by turns: `shown('µm', 1e-5, 'mm')`. */
function shown(first: string, ...more: readonly (number | string)[]): Shown {
  const steps: { unit: string; from: number }[] = [{ unit: first, from: 0 }];
  for (let index = 0; index + 1 < more.length; index += 2) steps.push({ unit: String(more[index + 1]), from: Number(more[index]) });
  return steps;
}

/** Per minute and per second mean turns where a speed of rotation is due (ISO 80000-3 names r/min and min⁻¹ alike). */
const perTime = { '1/min': 'rpm', '/min': 'rpm', 'min⁻¹': 'rpm', 'min^-1': 'rpm', 'min-1': 'rpm', '1/s': 'rps', '/s': 'rps', 's⁻¹': 'rps', 's^-1': 'rps', 's-1': 'rps' };

/** In inch units the trade writes ounces and pounds in torques, and means forces. */
const inchTorques = {
  'oz·in': 'ozf·in', 'oz*in': 'ozf·in', 'oz in': 'ozf·in', 'oz-in': 'ozf·in', 'in·oz': 'ozf·in', 'in-oz': 'ozf·in',
  'lb·in': 'lbf·in', 'lb*in': 'lbf·in', 'lb in': 'lbf·in', 'lb-in': 'lbf·in', 'in·lb': 'lbf·in', 'in lb': 'lbf·in', 'in-lb': 'lbf·in',
  'lb·ft': 'lbf·ft', 'lb*ft': 'lbf·ft', 'lb ft': 'lbf·ft', 'lb-ft': 'lbf·ft', 'ft·lb': 'lbf·ft', 'ft lb': 'lbf·ft', 'ft-lb': 'lbf·ft',
};

const inchInertias = { 'oz·in·s²': 'ozf·in·s²', 'oz in s²': 'ozf·in·s²', 'oz-in-s²': 'ozf·in·s²', 'oz·in·s^2': 'ozf·in·s²', 'oz-in-s^2': 'ozf·in·s²', 'lb·in·s²': 'lbf·in·s²', 'lb in s²': 'lbf·in·s²' };

/** Steps a second are often given as a frequency. */
const stepRates = { Hz: 'step/s', kHz: 'kstep/s', MHz: 'Mstep/s' };

/** The SI unit of money stands for any currency: amounts are never converted. Plausible sizes are thresholds of our own, wide on purpose: they catch slipped prefixes, not unusual machines. */
export const quantityKinds = {
  length: { title: 'length', si: 'm', units: ['mm', 'µm', 'cm', 'm', 'in', 'thou', 'ft'], shown: shown('µm', 1e-5, 'mm', 10, 'm'), plausible: [1e-7, 20], minimum: 0 },
  position: { title: 'position', si: 'm', units: ['mm', 'cm', 'm', 'in', 'ft'], shown: shown('µm', 1e-5, 'mm', 10, 'm'), plausible: [1e-7, 20] },
  distance: { title: 'distance', si: 'm', units: ['m', 'km', 'mm', 'ft'], shown: shown('mm', 1, 'm', 1000, 'km'), plausible: [1e-3, 1e8], minimum: 0 },
  area: { title: 'area', si: 'm²', units: ['mm²', 'cm²', 'm²', 'in²'], shown: shown('mm²', 0.1, 'm²'), plausible: [1e-9, 100], minimum: 0 },
  volume: { title: 'volume', si: 'm³', units: ['mm³', 'cm³', 'm³', 'in³'], shown: shown('mm³', 1e-6, 'cm³', 0.1, 'm³'), minimum: 0 },
  'second-moment-of-area': { title: 'second moment of area', si: 'm⁴', units: ['mm⁴', 'cm⁴', 'in⁴'], shown: shown('mm⁴', 1e-7, 'cm⁴'), minimum: 0 },
  'section-modulus': { title: 'section modulus', si: 'm³', units: ['mm³', 'cm³', 'in³'], shown: shown('mm³', 1e-5, 'cm³'), minimum: 0 },
  mass: { title: 'mass', si: 'kg', units: ['kg', 'g', 't', 'lb', 'oz'], shown: shown('g', 0.1, 'kg'), plausible: [1e-4, 2000], minimum: 0 },
  density: { title: 'density', si: 'kg/m³', units: ['kg/m³', 'g/cm³', 'lb/in³'], shown: shown('kg/m³'), plausible: [5, 25_000], minimum: 0 },
  'linear-density': { title: 'mass per length', si: 'kg/m', units: ['g/m', 'kg/m', 'lb/ft'], shown: shown('g/m', 1, 'kg/m'), minimum: 0 },
  time: { title: 'time', si: 's', units: ['s', 'ms', 'min', 'h'], shown: shown('µs', 1e-3, 'ms', 1, 's', 600, 'min', 7200, 'h'), minimum: 0 },
  'life-time': { title: 'life in hours', si: 's', units: ['h', 'd', 'min'], shown: shown('min', 3600, 'h'), plausible: [3600, 3.6e9], minimum: 0 },
  angle: { title: 'angle', si: 'rad', units: ['°', 'rad', 'mrad', 'arcmin', 'arcsec'], shown: shown('°'), plausible: [1e-7, 126] },
  revolutions: { title: 'number of turns', si: '', units: ['rev'], shown: shown('rev'), minimum: 0, bare: true, spellings: { rev: '', turns: '', turn: '', revolutions: '' } },
  speed: { title: 'speed', si: 'm/s', units: ['mm/s', 'm/s', 'mm/min', 'm/min', 'in/s', 'in/min'], shown: shown('µm/s', 1e-5, 'mm/s', 1, 'm/s'), plausible: [1e-6, 20], minimum: 0 },
  acceleration: { title: 'acceleration', si: 'm/s²', units: ['mm/s²', 'm/s²', 'in/s²'], shown: shown('mm/s²', 1, 'm/s²'), plausible: [0.01, 100], minimum: 0, spellings: { g: 'kgf/kg', 'gₙ': 'kgf/kg' } },
  jerk: { title: 'jerk', si: 'm/s³', units: ['mm/s³', 'm/s³', 'in/s³'], shown: shown('mm/s³', 1, 'm/s³'), plausible: [0.01, 1e6], minimum: 0 },
  'rotational-speed': { title: 'speed of rotation', si: 'rad/s', units: ['rpm', 'rev/s', 'rad/s', '°/s'], shown: shown('rpm'), plausible: [1e-5, 1e4], minimum: 0, spellings: perTime },
  'angular-acceleration': { title: 'angular acceleration', si: 'rad/s²', units: ['rad/s²', 'rev/s²', '°/s²'], shown: shown('rad/s²') },
  force: { title: 'force', si: 'N', units: ['N', 'kN', 'lbf', 'ozf', 'kgf'], shown: shown('mN', 0.1, 'N', 10_000, 'kN'), plausible: [1e-3, 1e6] },
  'force-per-length': { title: 'force per length', si: 'N/m', units: ['N/mm', 'N/m', 'lbf/in'], shown: shown('N/m', 1000, 'N/mm'), minimum: 0 },
  torque: { title: 'torque', si: 'N·m', units: ['N·m', 'N·mm', 'N·cm', 'ozf·in', 'lbf·in'], shown: shown('N·mm', 0.1, 'N·m'), plausible: [1e-5, 2000], spellings: inchTorques },
  power: { title: 'power', si: 'W', units: ['W', 'kW', 'mW', 'hp'], shown: shown('mW', 0.1, 'W', 10_000, 'kW'), plausible: [1e-3, 1e5] },
  'power-density': { title: 'power per area', si: 'W/m²', units: ['W/cm²', 'W/m²', 'W/in²'], shown: shown('W/m²', 1000, 'W/cm²'), minimum: 0 },
  energy: { title: 'energy', si: 'J', units: ['J', 'kJ', 'mJ', 'Wh', 'kWh'], shown: shown('mJ', 0.1, 'J', 10_000, 'kJ'), plausible: [1e-6, 1e9] },
  voltage: { title: 'voltage', si: 'V', units: ['V', 'mV', 'kV'], shown: shown('mV', 0.1, 'V'), plausible: [1e-3, 1000], minimum: 0 },
  current: { title: 'current', si: 'A', units: ['A', 'mA'], shown: shown('mA', 0.1, 'A'), plausible: [1e-4, 500], minimum: 0 },
  resistance: { title: 'resistance', si: 'Ω', units: ['Ω', 'mΩ', 'kΩ'], shown: shown('mΩ', 0.1, 'Ω', 10_000, 'kΩ'), plausible: [1e-4, 1e7], minimum: 0 },
  inductance: { title: 'inductance', si: 'H', units: ['mH', 'µH', 'H'], shown: shown('µH', 1e-4, 'mH', 1, 'H'), plausible: [1e-7, 10], minimum: 0 },
  capacitance: { title: 'capacitance', si: 'F', units: ['µF', 'mF', 'nF'], shown: shown('nF', 1e-7, 'µF', 0.1, 'F'), plausible: [1e-12, 10], minimum: 0 },
  'torque-constant': { title: 'torque constant', si: 'N·m/A', units: ['N·m/A', 'mN·m/A', 'ozf·in/A'], shown: shown('mN·m/A', 0.1, 'N·m/A'), minimum: 0 },
  'voltage-constant': { title: 'voltage constant', si: 'V·s/rad', units: ['V·s/rad', 'mV·s/rad', 'V/rpm'], shown: shown('mV·s/rad', 0.1, 'V·s/rad'), minimum: 0 },
  'rotational-inertia': { title: 'moment of inertia', si: 'kg·m²', units: ['g·cm²', 'kg·cm²', 'kg·m²', 'oz·in²', 'lb·in²'], shown: shown('g·cm²', 1e-4, 'kg·cm²', 0.1, 'kg·m²'), plausible: [1e-10, 100], minimum: 0, spellings: inchInertias },
  frequency: { title: 'frequency', si: 'Hz', units: ['Hz', 'kHz', 'MHz'], shown: shown('Hz', 10_000, 'kHz'), plausible: [1e-4, 1e9], minimum: 0, spellings: { '1/s': 'Hz', 's⁻¹': 'Hz' } },
  'step-rate': { title: 'step rate', si: 'step/s', units: ['kHz', 'steps/s', 'Hz'], shown: shown('steps/s', 10_000, 'kHz'), plausible: [1, 1e8], minimum: 0, spellings: stepRates },
  'steps-per-length': { title: 'number of steps per length', si: 'step/m', units: ['steps/mm', 'steps/in'], shown: shown('steps/mm'), minimum: 0 },
  'travel-per-turn': { title: 'travel per turn', si: 'm/rad', units: ['mm/rev', 'in/rev'], shown: shown('mm/rev'), minimum: 0 },
  temperature: { title: 'temperature', si: 'K', units: ['°C', 'K', '°F'], shown: shown('°C'), plausible: [173.15, 773.15], minimum: 0 },
  'temperature-difference': { title: 'temperature difference', si: 'K', units: ['K', '°C', '°F'], shown: shown('K'), plausible: [1e-3, 1000] },
  'thermal-resistance': { title: 'thermal resistance', si: 'K/W', units: ['K/W', '°C/W'], shown: shown('K/W'), plausible: [1e-3, 1e4], minimum: 0 },
  'thermal-conductivity': { title: 'thermal conductivity', si: 'W/(m·K)', units: ['W/(m·K)'], shown: shown('W/(m·K)'), plausible: [1e-3, 3000], minimum: 0 },
  'specific-heat': { title: 'specific heat', si: 'J/(kg·K)', units: ['J/(kg·K)', 'kJ/(kg·K)'], shown: shown('J/(kg·K)'), plausible: [50, 10_000], minimum: 0 },
  'heat-transfer-coefficient': { title: 'heat transfer coefficient', si: 'W/(m²·K)', units: ['W/(m²·K)'], shown: shown('W/(m²·K)'), plausible: [0.01, 1e5], minimum: 0 },
  'heat-capacity': { title: 'heat capacity', si: 'J/K', units: ['J/K', 'kJ/K'], shown: shown('J/K', 10_000, 'kJ/K'), minimum: 0 },
  expansion: { title: 'thermal expansion', si: '1/K', units: ['µm/(m·K)', 'ppm/K', '1/K'], shown: shown('µm/(m·K)'), plausible: [1e-8, 1e-3] },
  pressure: { title: 'pressure', si: 'Pa', units: ['MPa', 'N/mm²', 'kPa', 'bar', 'psi'], shown: shown('Pa', 1000, 'kPa', 1e5, 'MPa', 1e10, 'GPa'), plausible: [1e-2, 1e12] },
  'pressure-velocity': { title: 'pressure times speed', si: 'Pa·m/s', units: ['MPa·m/s', 'MPa·m/min', 'psi·ft/min'], shown: shown('MPa·m/s'), plausible: [1, 1e9], minimum: 0 },
  'specific-wear': { title: 'specific wear', si: 'm²/N', units: ['mm³/(N·m)', 'mm³/(N·km)', 'm²/N'], shown: shown('mm³/(N·m)'), plausible: [1e-20, 1e-9], minimum: 0 },
  'wear-rate': { title: 'wear per distance', si: '', units: ['µm/km', 'mm/km'], shown: shown('µm/km'), minimum: 0 },
  stiffness: { title: 'stiffness', si: 'N/m', units: ['N/µm', 'N/mm', 'kN/mm', 'lbf/in'], shown: shown('N/mm', 1e5, 'N/µm'), plausible: [1, 1e11], minimum: 0 },
  'torsional-stiffness': { title: 'torsional stiffness', si: 'N·m/rad', units: ['N·m/rad', 'N·m/°', 'N·mm/rad', 'lbf·in/rad'], shown: shown('N·m/rad'), plausible: [1e-3, 1e8], minimum: 0, spellings: torquesPerTurn() },
  damping: { title: 'damping', si: 'N·s/m', units: ['N·s/m', 'N·s/mm'], shown: shown('N·s/m'), minimum: 0 },
  'rotational-damping': { title: 'rotational damping', si: 'N·m·s/rad', units: ['N·m·s/rad', 'N·m/rpm'], shown: shown('N·m·s/rad'), minimum: 0 },
  'diameter-speed': { title: 'diameter times speed', si: 'm·rad/s', units: ['mm·rpm', 'in·rpm'], shown: shown('mm·rpm'), plausible: [1e-4, 1e3], minimum: 0, spellings: { 'mm/min': 'mm·rpm' } },
  ratio: { title: 'ratio', si: '', units: ['%'], shown: shown(''), plausible: [1e-6, 1000], minimum: 0, bare: true },
  // A part of a whole: "20" is a slip for "20 %", and would count twenty times the whole.
  share: { title: 'share', si: '', units: ['%'], shown: shown('%'), plausible: [1e-6, 1], minimum: 0, maximum: 1, bare: true },
  count: { title: 'number', si: '', units: [], shown: shown(''), plausible: [1, 1e6], minimum: 0, bare: true, whole: true },
  money: { title: 'price', si: 'EUR', units: ['EUR', 'USD', 'GBP', 'CHF'], shown: shown(''), plausible: [0.01, 100_000], minimum: 0 },
} as const satisfies Record<string, QuantityKindDetails>;

export type QuantityKind = keyof typeof quantityKinds;

/** Torsional stiffness is often given per degree or per radian without saying that it is a torque of inch units. */
function torquesPerTurn(): Record<string, string> {
  return Object.fromEntries(Object.entries(inchTorques).flatMap(([written, read]) => ['rad', '°', 'deg'].map((per) => [`${written}/${per}`, `${read}/${per}`])));
}

/** Every kind, in the order of the list. */
export const quantityKindNames = Object.keys(quantityKinds) as readonly QuantityKind[];

/** Whether a name, from a schema, is a kind of quantity. */
export function isQuantityKind(name: unknown): name is QuantityKind {
  return typeof name === 'string' && Object.hasOwn(quantityKinds, name);
}

/** What is known of a kind. */
export function kindDetails(kind: QuantityKind): QuantityKindDetails {
  return quantityKinds[kind];
}

/** The title of a kind with its article: "a length", "an angle". */
export function aKind(kind: QuantityKind): string {
  const { title } = quantityKinds[kind];
  return `${/^[aeiou]/.test(title) ? 'an' : 'a'} ${title}`;
}
