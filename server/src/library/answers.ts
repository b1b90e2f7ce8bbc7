import { figuresOf } from '../services/figures-table.ts';
import { fixesAt, type Fix as ServiceFix } from '../services/fixes.ts';
import { TextLines } from '../services/text-lines.ts';
import { Snapshots, type Snapshot } from '../services/snapshot.ts';
import type { CheckOptions, CheckResult, Figure, FiguresResult, Finding, Fix, Place, Surroundings } from './library.ts';

/** Stands for the folder of the description: nothing is read from it. */
const folder = 'file:///description/';
const cautionSign = 'Caution: ';

export function checkAnswer(text: string, options: CheckOptions): CheckResult {
  const reading = new Reading(text, options);
  const { snapshot } = reading;
  const fixes = options.fixes === true ? fixesAt(snapshot, { start: 0, end: text.length }, ['spelling', 'remedy']) : [];
  return {
    findings: snapshot.diagnostics.map((diagnostic): Finding => {
      const { code, severity, message, uri, span, related, finding, accepted } = diagnostic;
      const sentences = message.split('\n');
      return {
        code,
        severity,
        message: sentences.filter((sentence) => !sentence.startsWith(cautionSign)).join(' '),
        cautions: sentences.filter((sentence) => sentence.startsWith(cautionSign)).map((sentence) => sentence.slice(cautionSign.length)),
        place: reading.place(uri, span),
        entry: (finding ? finding.place.path : snapshot.document.pathAt(span.start).path).join('/'),
        related: related.map((place) => ({ message: place.message, place: reading.place(place.uri, place.span) })),
        fixes: fixes.filter((fix) => fix.diagnostic === diagnostic).flatMap((fix) => fixOf(fix, reading)),
        ...(accepted ? { accepted: { reason: accepted.reason, severity: accepted.originally, ...(accepted.by === undefined ? {} : { by: accepted.by }), ...(accepted.until === undefined ? {} : { until: accepted.until }) } } : {}),
        ...(finding ? { subject: finding.subject, certain: finding.certain } : {}),
        ...(finding?.figure === undefined ? {} : { figure: finding.figure }),
        ...(finding?.worst === undefined || finding.limit === undefined ? {} : { worst: finding.worst, limit: finding.limit }),
      };
    }),
  };
}

const fixOf = ({ kind, title, changes }: ServiceFix, reading: Reading): readonly Fix[] =>
  kind !== 'spelling' && kind !== 'remedy' ? [] : [{ kind, title, edits: changes.flatMap(({ uri, edits }) => edits.map((edit) => ({ place: reading.place(uri, edit.span), text: edit.text }))) }];

export function figuresAnswer(text: string, options: Surroundings): FiguresResult {
  const reading = new Reading(text, options);
  return {
    figures: figuresOf(reading.snapshot).map((row): Figure => ({
      ...row,
      terms: row.terms.map((term) => ({ ...term, places: term.places.map(({ uri, line, column }) => ({ file: reading.nameOf(uri), line, column })) })),
    })),
  };
}

/** A description with what was given along with it. */
class Reading {
  readonly snapshot: Snapshot;
  /** By URI: the name under which it was given, and its text. */
  readonly #given = new Map<string, { readonly name: string; readonly lines: TextLines }>();

  constructor(text: string, { name = 'description.machine.yaml', partLists = {}, settings, today }: Surroundings) {
    if (typeof text !== 'string') throw new TypeError('The text of a description is a string.');
    if (typeof name !== 'string' || /\/$|^$/.test(name)) throw new TypeError('"name" is the name of a file.');
    if (typeof partLists !== 'object' || partLists === null || Object.values(partLists).some((list) => typeof list !== 'string')) throw new TypeError('"partLists" holds texts by path.');
    if (settings !== undefined && typeof settings !== 'string') throw new TypeError('"settings" is a text.');
    if (today !== undefined && !/^\d{4}-\d{2}-\d{2}$/.test(today)) throw new TypeError('"today" is a day as YYYY-MM-DD.');
    const uri = uriOf(name, folder);
    const settingsUri = uriOf('axiswright.yaml', uri);
    if (settings !== undefined) this.#add('axiswright.yaml', settingsUri, settings);
    for (const [path, list] of Object.entries(partLists)) this.#add(path, uriOf(path, uri), list);
    this.#add(name, uri, text);
    const snapshots = new Snapshots((asked) => this.#given.get(asked)?.lines.text, { today: () => today, settingsNear: () => (settings === undefined ? [] : [settingsUri]) });
    this.snapshot = snapshots.take(uri, text);
  }

  #add(name: string, uri: string, text: string): void {
    this.#given.set(uri, { name, lines: new TextLines(text) });
  }

  nameOf(uri: string): string {
    return this.#given.get(uri)?.name ?? uri.slice(folder.length);
  }

  place(uri: string, { start, end }: { readonly start: number; readonly end: number }): Place {
    const lines = this.#given.get(uri)?.lines;
    const at = (offset: number): Place['start'] => ({ ...(lines?.placeOf(offset) ?? { line: 1, column: 1 }), offset });
    return { file: this.nameOf(uri), start: at(start), end: at(end) };
  }
}

/** As paths are resolved under `uses`. */
const uriOf = (path: string, from: string): string => new URL(path.split('/').map(encodeURIComponent).join('/'), from).href;
