import type { QuantityKind } from '../language/quantity-kinds.ts';
import { childOf, nodeAt, type EntryPath, type MapNode, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Place } from './origin.ts';
import { Subject, type Override } from './subject.ts';

/** As much of a read document as the machine needs. */
export interface SourceDocument {
  readonly uri: string;
  readonly text: string;
  readonly root: SyntaxNode | null;
}

/** A node together with where it stands. */
export interface Located {
  readonly node: SyntaxNode | null;
  readonly place: Place;
}

/** What a subject has read of the documents, so that its results can be kept until that text changes. */
export type ReadingLog = Map<string, string | undefined>;

/** Stands in a log for "which part lists there were": a name that was sought beyond the machine's own file may be found elsewhere when they change. */
const LISTS = '\0lists';

const ALIAS = /(?:^|[\s,[{:])\*[^\s,\]}]/;

const logKey = (uri: string, path: EntryPath): string => `${uri}\n${path.join('\n')}`;

/** A machine's description with the part lists that it uses, and what in it can be computed: its subjects. */
export class Machine {
  readonly subjects: readonly Subject[];
  readonly #documents: ReadonlyMap<string, SourceDocument>;

  constructor(
    readonly main: SourceDocument,
    readonly lists: readonly SourceDocument[],
    /** Units in which figures are to be shown, by kind of quantity, where they are not the customary ones. */
    readonly units: ReadonlyMap<QuantityKind, string> = new Map(),
  ) {
    this.#documents = new Map([main, ...lists].map((document) => [document.uri, document]));
    this.subjects = [...this.#subjects()];
  }

  document(uri: string): SourceDocument | undefined {
    return this.#documents.get(uri);
  }

  /** The node at a path of a document, noting in the log that its section was looked at. */
  look(uri: string, path: EntryPath, log?: ReadingLog): SyntaxNode | null | undefined {
    if (log) {
      const section = path.slice(0, 2);
      const key = logKey(uri, section);
      if (!log.has(key)) log.set(key, this.#textAt(uri, section));
    }
    return nodeAt(this.#documents.get(uri)?.root, path);
  }

  /** Whether everything in the log still reads the same here. */
  agreesWith(log: ReadingLog): boolean {
    for (const [key, text] of log) {
      if (key === LISTS) {
        if (text !== this.#namesOfLists()) return false;
        continue;
      }
      const [uri = '', ...path] = key.split('\n');
      if (this.#textAt(uri, path) !== text) return false;
    }
    return true;
  }

  /** The entry called `name` in a section, in the machine's own file first and then in its part lists. */
  named(section: string, name: string, log?: ReadingLog): Located | undefined {
    const path = [section, name];
    const find = ({ uri }: SourceDocument): Located | undefined => {
      const node = this.look(uri, path, log);
      return node === undefined ? undefined : { node, place: { uri, path } };
    };
    const own = find(this.main);
    if (own) return own;
    log?.set(LISTS, this.#namesOfLists());
    for (const list of this.lists) {
      const found = find(list);
      if (found) return found;
    }
    return undefined;
  }

  /** Names in a section of the machine's own file. */
  namesIn(section: string, log?: ReadingLog): readonly string[] {
    const node = this.look(this.main.uri, [section], log);
    return node?.type === 'map' ? node.entries.map((entry) => entry.key.text) : [];
  }

  #namesOfLists(): string {
    return this.lists.map((list) => list.uri).join('\n');
  }

  #textAt(uri: string, path: EntryPath): string | undefined {
    const document = this.#documents.get(uri);
    const node = nodeAt(document?.root, path);
    if (!document || !node) return node === null ? '' : undefined;
    const text = document.text.slice(node.span.start, node.span.end);
    // What an alias stands for is written elsewhere, and may change while the section reads the same.
    return ALIAS.test(text) ? `${text}\0${document.text}` : text;
  }

  *#subjects(): Generator<Subject> {
    yield new Subject(this, 'machine', 'machine', new Map([['machine', []]]));
    const shared = this.#sharedAxes();
    for (const [name, axis] of this.#maps('axes')) {
      const path = ['axes', name];
      if (shared.includes(name)) {
        yield this.#sharedDriveSubject(path, shared);
        continue;
      }
      const options = childOf(axis, 'drive-options');
      if (options?.type === 'map') {
        const chosen = childOf(axis, 'chosen-drive');
        for (const option of options.entries) {
          const isChosen = chosen?.type === 'scalar' && chosen.text === option.key.text;
          yield this.#driveSubject(path, [...path, 'drive-options', option.key.text], isChosen);
        }
      } else {
        yield this.#driveSubject(path, [...path, 'drive'], true);
      }
    }
    for (const [name] of this.#maps('heating')) {
      const path = ['heating', name];
      yield new Subject(this, 'heater', path.join('/'), new Map([['machine', []], ['heater', path]]));
    }
    for (const [name] of this.#maps('supplies')) {
      const path = ['supplies', name];
      yield new Subject(this, 'supply', path.join('/'), new Map([['machine', []], ['supply', path]]));
    }
  }

  /** The two axes of a layout that share its drive; empty without such a layout. */
  #sharedAxes(): readonly string[] {
    const layout = childOf(this.main.root, 'layout');
    const kind = childOf(layout, 'kind');
    const axes = childOf(layout, 'axes');
    if (kind?.type !== 'scalar' || kind.text !== 'crossed-belts' || axes?.type !== 'list') return [];
    const names = axes.items.flatMap((item) => (item?.type === 'scalar' && item.text !== '' ? [item.text] : []));
    return names.length === 2 && names[0] !== names[1] ? names : [];
  }

  /** An axis that is driven by both motors of a layout: exact for moves along it alone, with the other axis as its partner. */
  #sharedDriveSubject(axis: EntryPath, shared: readonly string[]): Subject {
    const isFirst = shared[0] === axis[1];
    const partner = ['axes', shared[isFirst ? 1 : 0] ?? ''];
    const fixed = new Map<string, EntryPath>([['machine', []], ['axis', axis], ['drive', ['layout', 'drive']], ['layout', ['layout']], ['partner', partner]]);
    const origin = { from: 'here', place: { uri: this.main.uri, path: ['layout', 'kind'] } } as const;
    const overrides = new Map<string, Override>([
      ['layout.role', { type: 'choice', text: isFirst ? 'first' : 'second', origin }],
      ['drive.units', { type: 'number', nominal: 2, low: 2, high: 2, origin }],
    ]);
    const subject = new Subject(this, 'drive', `${axis.join('/')}/drive`, fixed, true, overrides);
    for (const key of ['kind', 'axes']) this.look(this.main.uri, ['layout', key], subject.log);
    return subject;
  }

  #driveSubject(axis: EntryPath, drive: EntryPath, chosen: boolean): Subject {
    return new Subject(this, 'drive', drive.join('/'), new Map([['machine', []], ['axis', axis], ['drive', drive]]), chosen);
  }

  #maps(section: string): readonly (readonly [string, MapNode])[] {
    const node = childOf(this.main.root, section);
    if (node?.type !== 'map') return [];
    return node.entries.flatMap((entry) => (entry.value?.type === 'map' ? [[entry.key.text, entry.value] as const] : []));
  }
}
