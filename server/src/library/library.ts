/**
 * Axiswright as a library: text in, plain data out. It reads no file and no clock, and gives the same answer to the same question.
 *
 *     import { check, figures } from 'axiswright';
 *     const { findings } = check(text, { partLists: { 'stock.parts.yaml': parts } });
 */
import { checkAnswer, figuresAnswer } from './answers.ts';

/** What a description is read with. */
export interface Surroundings {
  /** What the description is called in places; `*.parts.yaml` is read as a part list, `axiswright.yaml` as settings. `description.machine.yaml` when left out. */
  readonly name?: string;
  /** Texts of part lists by their paths, as the description names them under `uses`. A list that is not here counts as missing. */
  readonly partLists?: Readonly<Record<string, string>>;
  /** The text of `axiswright.yaml`, the settings of a repository. Its part lists are looked for in `partLists` too. */
  readonly settings?: string;
  /** The day on which it is read, YYYY-MM-DD; without it no accepted deviation ends. */
  readonly today?: string;
}

/** How `check` is to look. */
export interface CheckOptions extends Surroundings {
  /** Look for changes that cure a finding, each proven by carrying it out: most of the work. False when left out. */
  readonly fixes?: boolean;
}

export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** A stretch of a text. Lines and columns from 1, offsets from 0; columns and offsets in UTF-16 units. */
export interface Place {
  /** The `name` of the description, or the path of a part list as it was given. */
  readonly file: string;
  readonly start: { readonly line: number; readonly column: number; readonly offset: number };
  readonly end: { readonly line: number; readonly column: number; readonly offset: number };
}

/** Something to be said of a description. */
export interface Finding {
  /** Identifier of the check or of the problem, such as `screw-whirls`; each has a page in the reference. Stable. */
  readonly code: string;
  /** `error`: cannot work, or is dangerous. `warning`: outside of safe practice. */
  readonly severity: Severity;
  /** What, consequence, cure. Plain text, in English. */
  readonly message: string;
  /** What can hurt someone. */
  readonly cautions: readonly string[];
  readonly place: Place;
  /** Keys that lead to the entry, joined by "/"; empty for the text as a whole. */
  readonly entry: string;
  /** Entries that the finding comes from. */
  readonly related: readonly { readonly message: string; readonly place: Place }[];
  /** Changes that cure it; empty unless they were asked for. */
  readonly fixes: readonly Fix[];
  /** Set where the description accepts it; `severity` is what it would have. */
  readonly accepted?: { readonly reason: string; readonly by?: string; readonly until?: string; readonly severity: Severity };
  /** Of a finding about the design: what it is about, such as `axes/lift/drive`, and whether it holds at the nominal values too. */
  readonly subject?: string;
  readonly certain?: boolean;
  /** The figure compared, its deciding end and the limit that it breaks, in SI. */
  readonly figure?: string;
  readonly worst?: number;
  readonly limit?: number;
}

/** A change that cures a finding. */
export interface Fix {
  /** `spelling`: the same design, written right. `remedy`: another design, which was carried out and checked. */
  readonly kind: 'spelling' | 'remedy';
  /** What is done, and what comes of it. */
  readonly title: string;
  /** Stretches to be replaced, all in the texts as they were given. */
  readonly edits: readonly { readonly place: Place; readonly text: string }[];
}

/** A number with how sure it is, in SI. */
export interface Range {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

/** Where a formula, a limit or a value comes from. */
export interface Source {
  readonly title: string;
  /** Section, table or equation. */
  readonly where?: string;
  /** From memory, or thinly sourced. */
  readonly weak: boolean;
}

/** A figure of a machine. Numbers are in SI, texts in customary units. */
export interface Figure {
  /** `screw.whirl-speed`. Stable. */
  readonly id: string;
  readonly symbol: string;
  readonly title: string;
  readonly meaning: string;
  /** Kind of quantity, such as `rotational-speed`. */
  readonly quantity: string;
  /** `axes/lift/drive`, `machine`, `heating/bed`. */
  readonly subject: string;
  /** False for a drive option that is only compared. */
  readonly chosen: boolean;
  /** 1 decides, 2 matters, 3 is background. */
  readonly rank: 1 | 2 | 3;
  /** `missing`: entries lack. `unable`: it has no value here, for the reason given. */
  readonly state: 'computed' | 'missing' | 'unable';
  readonly value?: Range;
  /** Unit of `value`; empty for bare numbers. */
  readonly siUnit: string;
  /** The customary unit, and the value in it with its range, or the verdict in words. */
  readonly unit: string;
  readonly inUnit?: Range;
  readonly text?: string;
  readonly note?: string;
  /** Uncertain entries under it, the one that moves it most first. */
  readonly movedBy?: readonly string[];
  /** Entries that would make it computable. */
  readonly missing?: readonly string[];
  readonly reason?: string;
  /** The limit to look at first leads. */
  readonly limits: readonly {
    /** Identifier of the check that compares. */
    readonly check: string;
    readonly bad: 'above' | 'below';
    readonly severity: Severity;
    readonly value: Range;
    readonly text: string;
    /** On what it rests. */
    readonly basis: string;
    readonly source?: Source;
    /** Share of the limit that is used at the worst end. */
    readonly used?: number;
    readonly state: 'kept' | 'may-break' | 'broken';
  }[];
  readonly formula: string;
  /** What it is computed from directly. */
  readonly terms: readonly {
    readonly id: string;
    readonly symbol: string;
    readonly title: string;
    readonly text: string;
    readonly value?: Range;
    readonly siUnit?: string;
    readonly origin: 'written here' | 'part' | 'standard size' | 'handbook default' | 'several entries' | 'figure';
    readonly of?: string;
    readonly source?: string;
    readonly weak: boolean;
    readonly places: readonly { readonly file: string; readonly line: number; readonly column: number }[];
    /** For a default: the entry that replaces it. */
    readonly override?: string;
  }[];
  readonly sources: readonly Source[];
}

export interface CheckResult {
  /** In the order of the text. */
  readonly findings: readonly Finding[];
}

export interface FiguresResult {
  /** Subject by subject in the order of the text. A part list has none. */
  readonly figures: readonly Figure[];
}

/**
 * Everything to be said of a description. A text that is half written, or no description at all, has findings that say so.
 * @throws {TypeError} where an argument is not of the type that is asked for
 */
export function check(text: string, options: CheckOptions = {}): CheckResult {
  return checkAnswer(text, options);
}

/**
 * All figures of a description, those that lack entries too.
 * @throws {TypeError} where an argument is not of the type that is asked for
 */
export function figures(text: string, options: Surroundings = {}): FiguresResult {
  return figuresAnswer(text, options);
}
