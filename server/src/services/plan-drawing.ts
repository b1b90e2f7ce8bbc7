import { formatQuantity } from '../language/format-quantity.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { nominalUse } from '../figures/supports/in-use.ts';
import { massPlaceOf } from '../machine/mass-place.ts';
import { layoutOf, sharingOf, wrenchesIn } from '../figures/supports/layout.ts';
import { supportPolygon } from '../mechanics/support-polygon.ts';
import { placeLabels, type LabelledPoint } from './plot-labels.ts';
import { escapeXml, fit } from './plot-text.ts';
import { base64, FRAME, GRID, INK, PAPER } from './plot.ts';

/** Supports seen from above, in m; x to the right, y upwards. */
export interface Plan {
  readonly supports: readonly {
    readonly name: string;
    readonly x: number;
    readonly y: number;
    /** N at rest; undefined where it carries no weight, or nobody knows. */
    readonly reaction: number | undefined;
    /** Least and most in use, N; undefined where they hardly differ from the weight at rest. */
    readonly range: readonly [number, number] | undefined;
    readonly carries: boolean;
    /** Directions in the plane in which it holds, unit vectors. */
    readonly holds: readonly (readonly [number, number])[];
  }[];
  readonly centre: { readonly x: number; readonly y: number } | undefined;
  /** Where the centre of a mass may lie: middle and size. */
  readonly areas: readonly { readonly x: number; readonly y: number; readonly width: number; readonly depth: number }[];
  /** Corners of the support polygon; none with fewer than three supports that carry weight. */
  readonly polygon: readonly { readonly x: number; readonly y: number }[];
  /** What a screen reader says of it. */
  readonly alt: string;
}

/** The plan of the supports of a drive's axis; undefined where there are none that can be read. */
export function planOf(evaluation: Evaluation): Plan | undefined {
  const table = (id: string): { readonly rows: readonly (readonly number[])[]; readonly titles?: readonly string[] } | undefined => {
    const input = evaluation.input(id);
    return input.state === 'known' && input.value.type === 'table' ? input.value : undefined;
  };
  const joints = table('axis.support-joints');
  const masses = table('axis.mass-places');
  const layout = layoutOf(joints?.rows, joints?.titles);
  if (!layout) return undefined;
  const end = evaluation.bounds('axis.joint-stiffness-end')?.nominal ?? 0.5;
  const sharing = masses ? sharingOf(layout, masses.rows, end) : undefined;
  const shared = sharing === undefined || typeof sharing === 'string' ? undefined : sharing;
  const weight = (evaluation.bounds('axis.moved-mass')?.nominal ?? Number.NaN) * (evaluation.bounds('conditions.gravity')?.nominal ?? Number.NaN);
  const use = nominalUse(evaluation);
  const areas = (masses?.rows ?? []).map(massPlaceOf).flatMap(({ x, y }) =>
    x.high - x.low > SMALLEST_AREA || y.high - y.low > SMALLEST_AREA ? [{ x: (x.low + x.high) / 2, y: (y.low + y.high) / 2, width: x.high - x.low, depth: y.high - y.low }] : [],
  );
  const wrenches = wrenchesIn(layout, 'drives held');
  const supports = layout.joints.map(({ owner, at }, index) => {
    const share = shared?.shares.find((one) => one.index === index)?.share;
    const holds = wrenches
      .filter((one) => one.joint === index && one.holds !== 'couple' && Math.hypot(one.direction[0], one.direction[1]) > 0.1)
      .map(({ direction: [x, y] }) => [x / Math.hypot(x, y), y / Math.hypot(x, y)] as const);
    const carrier = use?.carriers.find((one) => one.index === index);
    const range = carrier === undefined ? undefined : ([carrier.least.value, carrier.most.value] as const);
    const telling = range !== undefined && range[1] - range[0] > TELLING_SPREAD * Math.max(...range.map(Math.abs));
    return { name: owner, x: at[0], y: at[1], reaction: share === undefined || !Number.isFinite(weight) ? undefined : share * weight, range: telling ? range : undefined, carries: share !== undefined, holds };
  });
  const carriers = supports.filter(({ carries }) => carries);
  const polygon = carriers.length < 3 ? [] : supportPolygon(carriers);
  const told = supports.map(labelOf).join(', ');
  return { supports, centre: shared?.centre, areas, polygon: polygon.length < 3 ? [] : polygon, alt: `Supports seen from above: ${told}`.replace(/\s+/g, ' ') };
}

const forceText = (newton: number, digits = 3): string => formatQuantity(newton, 'force', { unit: 'N', digits });

/** "screw 3 19.6 N", or "screw 3: 12 to 31 N" where what it carries depends on where things lie. */
const labelOf = ({ name, reaction, range }: Plan['supports'][number]): string => {
  if (range !== undefined) return `${name}: ${forceText(range[0], 2).replace(/\s*N$/, '')} to ${forceText(range[1], 2)}`;
  return reaction === undefined ? name : `${name} ${forceText(reaction)}`;
};

/** Part of the largest reaction by which both ends must differ to be worth telling. */
const TELLING_SPREAD = 0.1;

/** What is open by no more is only uncertain, m. */
const SMALLEST_AREA = 0.01;

const WIDTH = 440;
const HEIGHT = 236;
const FONT = 11;
const BOX = { left: 70, right: WIDTH - 70, top: 44, bottom: HEIGHT - 52 };
const HOLD = '#1d5273';
const POLYGON = '#8a7f52';
const AREA = '#7a3b2e';

const round = (value: number): number => Math.round(value * 10) / 10;

/** The plan as SVG text with a size and a background of its own. */
export function planSvg({ supports, centre, areas, polygon, alt }: Plan): string {
  const all = [...supports, ...(centre ? [centre] : []), ...areas.flatMap(({ x, y, width, depth }) => [{ x: x - width / 2, y: y - depth / 2 }, { x: x + width / 2, y: y + depth / 2 }])];
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  const [west, east, south, north] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((BOX.right - BOX.left) / Math.max(east - west, 1e-6), (BOX.bottom - BOX.top) / Math.max(north - south, 1e-6), 1e5);
  const px = (x: number): number => round((BOX.left + BOX.right) / 2 + (x - (west + east) / 2) * scale);
  const py = (y: number): number => round((BOX.top + BOX.bottom) / 2 - (y - (south + north) / 2) * scale);
  const marks: readonly LabelledPoint[] = supports.map((support, index) => ({ x: px(support.x), y: py(support.y), index, text: fit(labelOf(support), 150, FONT) }));
  const labels = placeLabels(marks, [...marks, ...(centre ? [{ x: px(centre.x), y: py(centre.y), text: '', index: marks.length }] : [])], { left: 6, right: WIDTH - 6, top: 26, bottom: HEIGHT - 34 }, [], FONT);
  const edge = polygon.length === 0 ? '' : `<path fill="${POLYGON}" fill-opacity=".2" stroke="${POLYGON}" stroke-dasharray="5 3" d="${polygon.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${py(y)}`).join('')}Z"/>`;
  const roams = areas.map(({ x, y, width, depth }) => `<rect x="${px(x - width / 2)}" y="${py(y + depth / 2)}" width="${round(width * scale)}" height="${round(depth * scale)}" fill="none" stroke="${AREA}" stroke-width=".8"/>`).join('');
  const holds = supports.flatMap(({ x, y, holds: directions }) => directions.map(([dx, dy]) => `M${round(px(x) - 13 * dx)} ${round(py(y) + 13 * dy)}L${round(px(x) + 13 * dx)} ${round(py(y) - 13 * dy)}`)).join('');
  const drawn = supports.map(({ x, y, carries }) =>
    carries ? `<circle cx="${px(x)}" cy="${py(y)}" r="5" fill="${PAPER}" stroke="${INK}" stroke-width="1.6"/>` : `<rect x="${px(x) - 4}" y="${py(y) - 4}" width="8" height="8" fill="${PAPER}" stroke="${INK}" stroke-width="1.6"/>`);
  const legend = [
    `<circle cx="18" cy="${HEIGHT - 15}" r="5" fill="${PAPER}" stroke="${INK}" stroke-width="1.6"/><text x="28" y="${HEIGHT - 11}">carries weight</text>`,
    `<rect x="118" y="${HEIGHT - 19}" width="8" height="8" fill="${PAPER}" stroke="${INK}" stroke-width="1.6"/><text x="132" y="${HEIGHT - 11}">guides</text>`,
    `<path stroke="${HOLD}" stroke-width="2.4" d="M186 ${HEIGHT - 15}h22"/><text x="213" y="${HEIGHT - 11}">holds this way</text>`,
    ...(areas.length > 0 ? [`<rect x="${WIDTH - 142}" y="10" width="14" height="9" fill="none" stroke="${AREA}" stroke-width=".8"/><text x="${WIDTH - 123}" y="18">where a mass may be</text>`] : []),
    ...(centre ? [`${gravity(318, HEIGHT - 15)}<text x="329" y="${HEIGHT - 11}">centre of gravity</text>`] : []),
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escapeXml(alt)}" font-family="sans-serif" font-size="${FONT}" fill="${INK}">`,
    `<rect x=".5" y=".5" width="${WIDTH - 1}" height="${HEIGHT - 1}" rx="4" fill="${PAPER}" stroke="${FRAME}"/>`,
    '<text x="12" y="19" font-size="12.5" font-weight="bold">Supports seen from above</text>',
    `<path stroke="${FRAME}" fill="none" d="M14 ${HEIGHT - 40}h22m-4 -3l4 3l-4 3M14 ${HEIGHT - 40}v-22m-3 4l3 -4l3 4"/><text x="40" y="${HEIGHT - 36}">X</text><text x="10" y="${HEIGHT - 66}">Y</text>`,
    `<path stroke="${GRID}" d="M8 ${HEIGHT - 28}H${WIDTH - 8}"/>`,
    edge,
    roams,
    `<path stroke="${HOLD}" stroke-width="2.4" d="${holds}"/>`,
    ...drawn,
    centre ? gravity(px(centre.x), py(centre.y)) : '',
    ...labels.map(({ text, labelX, labelY, anchor }) => `<text x="${round(labelX)}" y="${round(labelY)}" text-anchor="${anchor}" stroke="${PAPER}" stroke-width="3" stroke-linejoin="round" paint-order="stroke">${escapeXml(text)}</text>`),
    ...legend,
    '</svg>',
  ].join('');
}

/** The usual mark of a centre of gravity: a circle with two of its quarters filled. */
const gravity = (x: number, y: number): string =>
  `<circle cx="${x}" cy="${y}" r="6" fill="${PAPER}" stroke="${INK}"/><path d="M${x} ${y}V${round(y - 6)}A6 6 0 0 1 ${round(x + 6)} ${y}ZM${x} ${y}V${round(y + 6)}A6 6 0 0 1 ${round(x - 6)} ${y}Z"/>`;

/** Largest length of a data URI: editors cut hovers beyond a length of their own. */
const LONGEST_URI = 9_000;

/** The same as a base64 data URI for a Markdown image; undefined where there are too many supports for one. */
export function planDataUri(plan: Plan): string | undefined {
  const uri = `data:image/svg+xml;base64,${base64(planSvg(plan))}`;
  return uri.length < LONGEST_URI ? uri : undefined;
}
