import { extent, median, tickStep, ticks } from 'd3-array';
import { area, line } from 'd3-shape';
import type { Chart } from '../figures/figure.ts';
import { customaryUnit, type DisplayUnit } from './display-unit.ts';
import { isCrowded, placeLabels, type LabelledPoint } from './plot-labels.ts';
import { escapeXml, fit, widthOf } from './plot-text.ts';

/** The values that a chart's functions take: those of `evaluation.valuesAt(figure)`. */
export type ChartValues = Readonly<Record<string, unknown>>;

/** A declared chart, whatever its figure's aliases are. */
export type AnyChart = Chart<never>;

interface Curve {
  readonly title: string;
  readonly points: readonly (readonly [number, number])[];
}

/** A chart sampled and converted to the units in which it is drawn. */
interface Drawing {
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  readonly band: { readonly title: string; readonly points: readonly (readonly [number, number, number])[] } | undefined;
  readonly points: readonly { readonly title: string; readonly x: number; readonly y: number }[];
}

interface Axis {
  readonly title: string;
  readonly unit: DisplayUnit;
  readonly from: number;
  readonly to: number;
}

const WIDTH = 440;
/** With title, axis and one row of legend the whole picture fits into the 250 px of an editor's hover. */
const PLOT_HEIGHT = 126;
const FONT = 11;
const ROW = 16;
const TOP = 46;
const RIGHT = 16;

// Dark ink on paper of its own: reads the same in a light and in a dark window.
export const PAPER = '#f3f2ec';
export const FRAME = '#8d8f86';
export const INK = '#23272b';
export const GRID = '#d5d4ca';
const BAND = '#8a7f52';
/** Curves differ in dash pattern first, in colour second. */
const STYLES = [
  { colour: '#1d5273', dash: '' },
  { colour: '#8f3d20', dash: '7 3' },
  { colour: '#40613a', dash: '2 3' },
  { colour: '#5b4478', dash: '9 3 2 3' },
] as const;

/**
 * The chart as SVG text with a size and a background of its own. Undefined where there is nothing to draw: no stretch of x, or no curve
 * with at least two finite values.
 */
export function plotSvg(chart: AnyChart, values: ChartValues): string | undefined {
  return draw(chart, values, 60);
}

/** Largest length of a data URI: editors cut hovers beyond a length of their own, and pictures are for a glance. */
const LONGEST_URI = 6_000;

/** The same as a base64 data URI of less than 6 kB, for a Markdown image; drawn with fewer samples where it would be longer. */
export function plotDataUri(chart: AnyChart, values: ChartValues): string | undefined {
  for (const samples of [60, 40, 25, 12]) {
    const svg = draw(chart, values, samples);
    if (svg === undefined) return undefined;
    const uri = `data:image/svg+xml;base64,${base64(svg)}`;
    if (uri.length < LONGEST_URI) return uri;
  }
  return undefined;
}

/** What a screen reader says of it, in one line. */
export function plotAlt(chart: AnyChart, values: ChartValues): string {
  return `${chart.title}. ${chart.alt(values as never)}`.replace(/\s+/g, ' ');
}

function draw(chart: AnyChart, values: ChartValues, samples: number): string | undefined {
  const drawing = sample(chart, values, samples);
  if (!drawing) return undefined;
  const { x, y } = drawing;
  const yTicks = ticks(y.from, y.to, 5);
  const xTicks = ticks(x.from, x.to, 7);
  const yText = formatter(y.from, y.to, 5);
  const xText = formatter(x.from, x.to, 7);
  const left = 14 + Math.max(...yTicks.map((tick) => widthOf(yText(tick), FONT)), 12);
  const right = WIDTH - RIGHT;
  const bottom = TOP + PLOT_HEIGHT;
  const px = (value: number): number => left + ((value - x.from) / (x.to - x.from)) * (right - left);
  const py = (value: number): number => bottom - ((value - y.from) / (y.to - y.from)) * PLOT_HEIGHT;
  const box: Box = { left, right, top: TOP, bottom };
  const marks = marksOf(drawing, box, px, py);
  const legend = legendOf(drawing, marks, left, bottom + 44, right - left);
  const height = bottom + 48 + legend.rows * ROW;
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${escapeXml(plotAlt(chart, values))}" font-family="sans-serif" font-size="${FONT}" fill="${INK}">`,
    `<rect x=".5" y=".5" width="${WIDTH - 1}" height="${height - 1}" rx="4" fill="${PAPER}" stroke="${FRAME}"/>`,
    `<text x="12" y="19" font-size="12.5" font-weight="bold">${escapeXml(fit(chart.title, WIDTH - 24, 12.5))}</text>`,
    `<text x="12" y="37">${escapeXml(fit(axisTitle(y), WIDTH - 24, FONT))}</text>`,
    `<text x="${right}" y="${bottom + 32}" text-anchor="end">${escapeXml(fit(axisTitle(x), right - left, FONT))}</text>`,
    `<path stroke="${GRID}" d="${yTicks.map((tick) => `M${left} ${round(py(tick))}H${right}`).join('')}${xTicks.map((tick) => `M${round(px(tick))} ${TOP}V${bottom}`).join('')}"/>`,
    `<g text-anchor="end">${yTicks.map((tick) => `<text x="${left - 5}" y="${round(py(tick) + 4)}">${yText(tick)}</text>`).join('')}</g>`,
    `<g text-anchor="middle">${xTicks.map((tick) => tickLabel(px(tick), bottom + 15, xText(tick))).join('')}</g>`,
    plotArea(drawing, left, right, px, py),
    `<path fill="none" stroke="${FRAME}" d="M${left} ${TOP}V${bottom}H${right}"/>`,
    pointsOf(drawing, marks, box, px, py),
    legend.svg,
    '</svg>',
  ];
  return parts.join('');
}

const axisTitle = (axis: Axis): string => (axis.unit.symbol === '' ? axis.title : `${axis.title} in ${axis.unit.symbol}`);

/** A tick label that stays inside the picture at both ends. */
function tickLabel(x: number, y: number, text: string): string {
  const half = widthOf(text, FONT) / 2;
  return `<text x="${round(Math.min(Math.max(x, half + 4), WIDTH - half - 4))}" y="${y}">${text}</text>`;
}

/** Curves and band in a nested picture, which cuts off what lies outside without an identifier that could clash in a page with several. */
function plotArea({ band, curves }: Drawing, left: number, right: number, px: (x: number) => number, py: (y: number) => number): string {
  const shade = area<readonly [number, number, number]>()
    .x((d) => px(d[0]) - left).y0((d) => py(d[1]) - TOP).y1((d) => py(d[2]) - TOP)
    .defined((d) => d.every(Number.isFinite)).digits(1);
  const path = line<readonly [number, number]>()
    .x((d) => px(d[0]) - left).y((d) => py(d[1]) - TOP)
    .defined((d) => d.every(Number.isFinite)).digits(1);
  const shaded = band ? `<path fill="${BAND}" fill-opacity=".28" stroke="${BAND}" stroke-width=".7" d="${shade(band.points) ?? ''}"/>` : '';
  const drawn = curves.map((curve, index) => `<path fill="none" ${strokeOf(index)} d="${path(curve.points) ?? ''}"/>`).join('');
  return `<svg x="${left}" y="${TOP}" width="${right - left}" height="${PLOT_HEIGHT}">${shaded}${drawn}</svg>`;
}

function strokeOf(index: number): string {
  const style = STYLES[index % STYLES.length] ?? STYLES[0];
  return `stroke="${style.colour}" stroke-width="1.8"${style.dash === '' ? '' : ` stroke-dasharray="${style.dash}"`}`;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Operating points in px. What lies outside is shown at the edge, and says so. */
function marksOf(drawing: Drawing, box: Box, px: (x: number) => number, py: (y: number) => number): readonly LabelledPoint[] {
  return drawing.points.map((point, index) => ({
    x: Math.min(Math.max(px(point.x), box.left), box.right),
    y: Math.min(Math.max(py(point.y), box.top), box.bottom),
    text: inside(point, drawing) ? point.title : `${point.title} (beyond)`,
    index,
  }));
}

/** Marks of different shape, each with its label where it hides least; labels of marks that are close together stand in the legend. */
function pointsOf(drawing: Drawing, marks: readonly LabelledPoint[], box: Box, px: (x: number) => number, py: (y: number) => number): string {
  const edges = (drawing.band?.points ?? []).flatMap(([x, low, high]) => [[x, low] as const, [x, high] as const]);
  const hidden = [...drawing.curves.flatMap((curve) => curve.points), ...edges].map(([x, y]) => ({ x: px(x), y: py(y) }));
  const alone = marks.filter((point) => !isCrowded(point, marks)).map((point) => ({ ...point, text: fit(point.text, 180, FONT) }));
  const labels = placeLabels(alone, marks, box, hidden, FONT).map(({ text, labelX, labelY, anchor }) =>
    `<text x="${round(labelX)}" y="${round(labelY)}" text-anchor="${anchor}" stroke="${PAPER}" stroke-width="3" stroke-linejoin="round" paint-order="stroke">${escapeXml(text)}</text>`);
  return [...labels, ...marks.map(({ x, y, index }) => mark(x, y, index))].join('');
}

const inside = (point: { readonly x: number; readonly y: number }, { x, y }: Drawing): boolean => point.x >= x.from && point.x <= x.to && point.y >= y.from && point.y <= y.to;

/** Circle, square, diamond, triangle, in turn. */
function mark(x: number, y: number, index: number): string {
  const paint = `fill="${PAPER}" stroke="${INK}" stroke-width="1.6"`;
  const [cx, cy] = [round(x), round(y)];
  switch (index % 4) {
    case 0:
      return `<circle cx="${cx}" cy="${cy}" r="4" ${paint}/>`;
    case 1:
      return `<path d="M${cx - 4} ${cy - 4}h8v8h-8z" ${paint}/>`;
    case 2:
      return `<path d="M${cx} ${cy - 5}l5 5l-5 5l-5 -5z" ${paint}/>`;
    default:
      return `<path d="M${cx} ${cy - 5}l5 9h-10z" ${paint}/>`;
  }
}

/** One row a curve, or two side by side where both titles are short. */
function legendOf({ curves, band }: Drawing, marks: readonly LabelledPoint[], left: number, top: number, width: number): { readonly svg: string; readonly rows: number } {
  const entries = [
    ...curves.map((curve, index) => ({ title: curve.title, sample: (x: number, y: number) => `<path ${strokeOf(index)} d="M${x} ${y - 4}h24"/>` })),
    ...(band ? [{ title: band.title, sample: (x: number, y: number) => `<rect x="${x}" y="${y - 9}" width="24" height="10" fill="${BAND}" fill-opacity=".28" stroke="${BAND}" stroke-width=".7"/>` }] : []),
    ...marks.filter((point) => isCrowded(point, marks)).map((point) => ({ title: point.text, sample: (x: number, y: number) => mark(x + 12, y - 4, point.index) })),
  ];
  const columns = entries.length > 1 && entries.every((entry) => widthOf(entry.title, FONT) + 34 < width / 2) ? 2 : 1;
  const svg = entries
    .map((entry, index) => {
      const x = round(left + (index % columns) * (width / columns));
      const y = top + Math.floor(index / columns) * ROW + 8;
      return `${entry.sample(x, y)}<text x="${x + 30}" y="${y}">${escapeXml(fit(entry.title, width / columns - 34, FONT))}</text>`;
    })
    .join('');
  return { svg, rows: Math.ceil(entries.length / columns) };
}

function sample(chart: AnyChart, values: ChartValues, samples: number): Drawing | undefined {
  const given = values as never;
  const [from, to] = [chart.x.from(given), chart.x.to(given)];
  if (!Number.isFinite(from) || !Number.isFinite(to) || from >= to) return undefined;
  const xs = Array.from({ length: samples + 1 }, (_, index) => from + ((to - from) * index) / samples);
  const { band } = chart;
  const inSi: Omit<Drawing, 'x' | 'y'> = {
    points: (chart.points ?? []).map((point) => ({ title: point.title, x: point.x(given), y: point.y(given) })).filter((point) => Number.isFinite(point.x) && Number.isFinite(point.y)),
    curves: chart.curves
      .map((curve) => ({ title: curve.title, points: xs.map((x) => [x, guarded(() => curve.y(x, given))] as const) }))
      .filter((curve) => isDrawable(curve.points)),
    band: band && { title: band.title, points: xs.map((x) => [x, guarded(() => band.low(x, given)), guarded(() => band.high(x, given))] as const) },
  };
  if (inSi.curves.length === 0) return undefined;
  // A scale of temperature does not begin at absolute zero.
  const y = yRange(inSi, chart.y.quantity !== 'temperature');
  const xUnit = customaryUnit(chart.x.quantity, chart.x.unit, Math.max(Math.abs(from), Math.abs(to)));
  const yUnit = customaryUnit(chart.y.quantity, chart.y.unit, Math.max(Math.abs(y.from), Math.abs(y.to)));
  return {
    x: { title: chart.x.title, unit: xUnit, from: xUnit.of(from), to: xUnit.of(to) },
    y: { title: chart.y.title, unit: yUnit, from: yUnit.of(y.from), to: yUnit.of(y.to) },
    points: inSi.points.map((point) => ({ title: point.title, x: xUnit.of(point.x), y: yUnit.of(point.y) })),
    curves: inSi.curves.map((curve) => ({ title: curve.title, points: curve.points.map(([px, py]) => [xUnit.of(px), yUnit.of(py)] as const) })),
    band: inSi.band && isDrawable(inSi.band.points) && isWide(inSi.band.points, y.to - y.from) ? { title: inSi.band.title, points: inSi.band.points.map(([px, low, high]) => [xUnit.of(px), yUnit.of(low), yUnit.of(high)] as const) } : undefined,
  };
}

/** A curve outside its domain has no value there. */
function guarded(compute: () => number): number {
  try {
    return compute();
  } catch {
    return Number.NaN;
  }
}

const isDrawable = (points: readonly (readonly number[])[]): boolean => points.filter((point) => point.every(Number.isFinite)).length >= 2;

/** Whether a band can be seen somewhere; one without width would stand in the legend alone. */
const isWide = (points: readonly (readonly [number, number, number])[], height: number): boolean => points.some(([, low, high]) => high - low > height / 200);

/** From zero (or below) to a little over the largest value. A curve that shoots up at one end is cut off, so that the rest can be read. */
function yRange(drawing: Omit<Drawing, 'x' | 'y'>, fromZero: boolean): { readonly from: number; readonly to: number } {
  const marked = drawing.points.map((point) => point.y);
  const finite = [...drawing.curves.flatMap((curve) => curve.points.map((point) => point[1])), ...(drawing.band?.points ?? []).flatMap((point) => [point[1], point[2]])].filter(Number.isFinite);
  const [low = 0, high = 1] = extent([...finite, ...marked]);
  const middle = median(finite) ?? 0;
  const steep = low >= 0 && high > 6 * middle && middle > 0;
  const top = steep ? Math.min(high, Math.max(3 * middle, ...marked.map((y) => 1.4 * y))) : high;
  const from = fromZero ? Math.min(0, low) : low - 0.1 * (high - low);
  const to = fromZero ? Math.max(top, 0) : top;
  return to > from ? { from: from < 0 ? from - 0.05 * (to - from) : from, to: to + 0.06 * (to - from) } : { from, to: from + 1 };
}

/** Tick labels with as many decimals as their step needs. */
function formatter(from: number, to: number, count: number): (value: number) => string {
  const step = Math.abs(tickStep(from, to, count));
  const decimals = Math.min(6, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
  return (value) => (Math.abs(value) < step / 1e6 ? '0' : Math.abs(value) >= 1e6 ? value.toExponential(1) : value.toFixed(decimals));
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** Text as base64, for a data URI. */
export function base64(text: string): string {
  let binary = '';
  for (const byte of new TextEncoder().encode(text)) binary += String.fromCharCode(byte);
  return btoa(binary);
}
