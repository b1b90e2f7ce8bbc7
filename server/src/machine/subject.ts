import { readQuantity } from '../language/read-quantity.ts';
import type { QuantityKind } from '../language/quantity-kinds.ts';
import type { Span } from '../language/spans.ts';
import { childOf, type EntryPath, type MapNode, type SyntaxNode } from '../language/syntax-tree.ts';
import { entrySchema } from './entry-schema.ts';
import { fallbacksFor } from './fallback-registry.ts';
import type { Input, InputReader, ListReader, Member } from './input.ts';
import type { Machine, ReadingLog } from './machine.ts';
import type { Origin, Place } from './origin.ts';
import { scopeRow, splitInput, type SubjectKind } from './scopes.ts';
import type { Bounded, InputValue } from './values.ts';

/** A map from which a scope's entries are read; the first layer that has an entry wins. */
interface Layer {
  readonly node: MapNode;
  readonly place: Place;
  /** The part's name where the layer is a named part. */
  readonly part?: string;
}

/** A value that stands in for what is written, and where it comes from if not from the entry's own place. */
export type Override = InputValue & { readonly origin?: Origin };

/** What an evaluation is about: a drive of an axis, a heated part, a supply, or the machine as a whole. Reads inputs by name. */
export class Subject {
  /** What has been read of the documents so far. */
  readonly log: ReadingLog = new Map();
  readonly #layers = new Map<string, readonly Layer[]>();
  readonly #inputs = new Map<string, Input>();

  constructor(
    readonly machine: Machine,
    readonly kind: SubjectKind,
    readonly id: string,
    /** Scopes whose maps stand at a fixed place of the machine's own file. */
    readonly fixed: ReadonlyMap<string, EntryPath>,
    /** False for a drive option that is only compared. */
    readonly chosen = true,
    /** Values that stand in for what is written, while a remedy looks for one that passes, or that come from other subjects. */
    readonly overrides: ReadonlyMap<string, Override> = new Map(),
  ) {}

  /** The same subject with some inputs replaced. */
  withInputs(overrides: ReadonlyMap<string, Override>): Subject {
    return new Subject(this.machine, this.kind, this.id, this.fixed, this.chosen, new Map([...this.overrides, ...overrides]));
  }

  /** Whether this subject can have this map: a drive with a belt has no nut, and only a layout of two axes gives an axis a partner. */
  hasScope(scope: string): boolean {
    const { subjects, of, within } = scopeRow(scope);
    if (!subjects.includes(this.kind)) return false;
    if (of !== undefined && this.reader.choice('drive.transmission') !== of) return false;
    return this.fixed.has(scope) || [within?.scope ?? []].flat().some((holder) => this.hasScope(holder));
  }

  /** Whether the description has this map at all (a coupling, a brake …). */
  isPresent(scope: string): boolean {
    return this.hasScope(scope) && (this.#layersOf(scope).length > 0 || [...this.overrides.keys()].some((input) => input.startsWith(`${scope}.`)));
  }

  /** Where a scope's map stands, or where it would be written: the drive's own place first. */
  placeOf(scope: string, entry?: string): Place | undefined {
    const layers = this.#layersOf(scope);
    const holder = entry === undefined ? layers[0] : (layers.find((layer) => childOf(layer.node, entry) !== undefined) ?? layers[0]);
    if (holder) return entry === undefined ? holder.place : { uri: holder.place.uri, path: [...holder.place.path, entry] };
    const wouldBe = this.#wouldBe(scope);
    return wouldBe && entry !== undefined ? { uri: wouldBe.uri, path: [...wouldBe.path, entry] } : wouldBe;
  }

  input(id: string): Input {
    let found = this.#inputs.get(id);
    if (!found) {
      // A fallback that asks for itself in a circle sees its own input as missing.
      this.#inputs.set(id, { id, state: 'missing', write: undefined });
      found = this.#read(id);
      this.#inputs.set(id, found);
    }
    return found;
  }

  readonly reader: InputReader = {
    number: (id) => {
      const input = this.input(id);
      return input.state === 'known' && input.value.type === 'number' ? input.value : undefined;
    },
    choice: (id) => {
      const input = this.input(id);
      return input.state === 'known' && input.value.type === 'choice' ? input.value.text : undefined;
    },
    origin: (id) => {
      const input = this.input(id);
      return input.state === 'known' ? input.origin : undefined;
    },
    isWritten: (id) => {
      const { scope, entry } = splitInput(id);
      return this.#layersOf(scope).some((layer) => this.#childOf(layer, entry) !== undefined);
    },
  };

  /** What stands under a key of a layer. Of the whole text, which is the machine's own map, it is noted that this section was looked at. */
  #childOf(layer: Layer, entry: string): SyntaxNode | null | undefined {
    return layer.place.path.length === 0 ? this.machine.look(layer.place.uri, [entry], this.log) : childOf(layer.node, entry);
  }

  #read(id: string): Input {
    const { scope, entry } = splitInput(id);
    const override = this.overrides.get(id);
    const write = this.hasScope(scope) ? this.placeOf(scope, entry) : undefined;
    if (override) {
      const { origin = write ? { from: 'here', place: write } : { from: 'several', parts: [] }, ...value } = override;
      return { id, state: 'known', value, origin };
    }
    if (!this.hasScope(scope)) return { id, state: 'missing', write: undefined };
    for (const layer of this.#layersOf(scope)) {
      const node = this.#childOf(layer, entry);
      if (node === undefined || node === null) continue;
      const place = { uri: layer.place.uri, path: [...layer.place.path, entry] };
      const value = readEntry(node, id);
      if (value === 'not-a-value') break;
      if (value === undefined) return { id, state: 'unreadable', place };
      return { id, state: 'known', value, origin: layer.part === undefined ? { from: 'here', place } : { from: 'part', part: layer.part, place } };
    }
    return this.#fallBack(id, write) ?? { id, state: 'missing', write };
  }

  #fallBack(id: string, write: Place | undefined): Input | undefined {
    const declared = fallbacksFor(id);
    for (const { compose } of declared) {
      const composed = compose?.(this.reader, this.#lists);
      if (composed) return { id, state: 'known', ...composed };
    }
    for (const fallback of declared) {
      const standard = fallback.standard?.(this.reader);
      if (!standard) continue;
      const sizeOrigin = this.reader.origin(standard.sizeInput);
      const place = sizeOrigin && 'place' in sizeOrigin && sizeOrigin.place ? sizeOrigin.place : write;
      if (place) return { id, state: 'known', value: standard.value, origin: { from: 'standard', size: standard.size, source: standard.source, place } };
    }
    for (const fallback of declared) {
      const handbook = fallback.handbook?.(this.reader);
      if (!handbook) continue;
      const origin: Origin = { from: 'handbook', source: handbook.source, weak: handbook.weak ?? false, place: write };
      return { id, state: 'known', value: handbook.value, origin, ...(handbook.note === undefined ? {} : { note: handbook.note }) };
    }
    return undefined;
  }

  readonly #lists: ListReader = {
    members: (input) => {
      const found = this.#listNode(input);
      return found?.node.items.map((item, index) => memberAt(mapOr(item, found.node.span), `${index + 1}`, { uri: found.place.uri, path: [...found.place.path, String(index)] }, this.#named));
    },
    entries: (input) => {
      const { scope, entry } = splitInput(input);
      for (const layer of this.#layersOf(scope)) {
        const node = this.#childOf(layer, entry);
        if (node?.type !== 'map') continue;
        const path = [...layer.place.path, entry];
        return node.entries.map(({ key, value }) => memberAt(mapOr(value, key.span), key.text, { uri: layer.place.uri, path: [...path, key.text] }, this.#named));
      }
      return undefined;
    },
    named: (input, section) => {
      const found = this.#listNode(input);
      return found && this.#named(section, found.node);
    },
    texts: (input) => this.#listNode(input)?.node.items.flatMap((item) => (item?.type === 'scalar' && item.text !== '' ? [item.text] : [])),
    quantities: (input, quantity) => {
      const found = this.#listNode(input);
      if (!found) return undefined;
      const read = found.node.items.map((item, index) => {
        const reading = item?.type === 'scalar' ? readQuantity(item.text, quantity) : undefined;
        const origin: Origin = { from: 'here', place: { uri: found.place.uri, path: [...found.place.path, String(index)] } };
        return reading?.ok ? { value: reading.quantity, origin } : undefined;
      });
      return read.every((item) => item !== undefined) ? read : undefined;
    },
  };

  readonly #named: NamedMembers = (section, list) =>
    list.items.flatMap((item) => {
      if (item?.type !== 'scalar') return [];
      const target = this.machine.named(section, item.text, this.log);
      return target?.node?.type === 'map' ? [memberAt(target.node, item.text, target.place, this.#named)] : [];
    });

  #listNode(input: string): { readonly node: SyntaxNode & { type: 'list' }; readonly place: Place } | undefined {
    const { scope, entry } = splitInput(input);
    for (const layer of this.#layersOf(scope)) {
      const node = this.#childOf(layer, entry);
      if (node?.type === 'list') return { node, place: { uri: layer.place.uri, path: [...layer.place.path, entry] } };
    }
    return undefined;
  }

  #layersOf(scope: string): readonly Layer[] {
    let layers = this.#layers.get(scope);
    if (!layers) {
      this.#layers.set(scope, []);
      layers = this.#findLayers(scope);
      this.#layers.set(scope, layers);
    }
    return layers;
  }

  #findLayers(scope: string): readonly Layer[] {
    const row = scopeRow(scope);
    if (!this.hasScope(scope)) return [];
    const fixed = this.fixed.get(scope);
    if (fixed) {
      const node = fixed.length === 0 ? this.machine.main.root : this.machine.look(this.machine.main.uri, fixed, this.log);
      return node?.type === 'map' ? [{ node, place: { uri: this.machine.main.uri, path: fixed } }] : [];
    }
    const holders = this.#holders(scope);
    const key = row.within?.key ?? '';
    const values = holders.flatMap((holder) => {
      const path = [...holder.place.path, key];
      const node = path.length === 1 ? this.machine.look(holder.place.uri, path, this.log) : childOf(holder.node, key);
      return node ? [{ node, place: { uri: holder.place.uri, path }, part: holder.part }] : [];
    });
    if (row.section !== undefined) return this.#sectionLayers(row.section, values[0]?.node, row.byNameOnly === true);
    return values.flatMap(({ node, place, part }): readonly Layer[] => {
      if (node.type === 'scalar') return row.part ? this.#partLayers(node.text, row.part.kinds) : [];
      if (node.type !== 'map') return [];
      const name = row.part?.by === 'part-key' ? childOf(node, 'part') : undefined;
      const own: Layer = part === undefined ? { node, place } : { node, place, part };
      return name?.type === 'scalar' && row.part ? [own, ...this.#partLayers(name.text, row.part.kinds)] : [own];
    });
  }

  #holders(scope: string): readonly Layer[] {
    const within = scopeRow(scope).within?.scope ?? [];
    const holder = (typeof within === 'string' ? [within] : within).find((candidate) => this.hasScope(candidate));
    return holder === undefined ? [] : this.#layersOf(holder);
  }

  #partLayers(name: string, kinds: readonly string[]): readonly Layer[] {
    const found = this.machine.named('parts', name, this.log);
    if (found?.node?.type !== 'map') return [];
    const itsKind = childOf(found.node, 'kind');
    return itsKind?.type === 'scalar' && kinds.includes(itsKind.text) ? [{ node: found.node, place: found.place, part: name }] : [];
  }

  /** The section's entry that is named; without a name, the only entry there is. */
  #sectionLayers(section: string, name: SyntaxNode | undefined, byNameOnly: boolean): readonly Layer[] {
    const chosen = name?.type === 'scalar' ? name.text : byNameOnly ? undefined : this.#onlyNameIn(section);
    const found = chosen === undefined ? undefined : this.machine.named(section, chosen, this.log);
    return found?.node?.type === 'map' ? [{ node: found.node, place: found.place }] : [];
  }

  /** Rests on the whole section, so it is asked for only where no name is written. */
  #onlyNameIn(section: string): string | undefined {
    const names = this.machine.namesIn(section, this.log);
    return names.length === 1 ? names[0] : undefined;
  }

  #wouldBe(scope: string): Place | undefined {
    const fixed = this.fixed.get(scope);
    if (fixed) return { uri: this.machine.main.uri, path: fixed };
    const key = scopeRow(scope).within?.key;
    const holder = this.#holders(scope)[0]?.place;
    return holder && key !== undefined ? { uri: holder.uri, path: [...holder.path, key] } : undefined;
  }
}

/** A member that is half written counts as one that says nothing: left out, it would make what the others do together look different. */
const mapOr = (node: SyntaxNode | null, span: Span): MapNode => (node?.type === 'map' ? node : { type: 'map', span, flow: false, entries: [] });

/** The entries of a section that a list names; names that lead nowhere are left out. */
type NamedMembers = (section: string, list: SyntaxNode & { type: 'list' }) => readonly Member[];

function memberAt(node: MapNode, title: string, place: Place, named: NamedMembers): Member {
  const text = (entry: string): string | undefined => {
    const value = childOf(node, entry);
    return value?.type === 'scalar' ? value.text : undefined;
  };
  return {
    title,
    place,
    choice: text,
    within: (key) => {
      const value = childOf(node, key);
      return value?.type === 'map' ? memberAt(value, key, { uri: place.uri, path: [...place.path, key] }, named) : undefined;
    },
    named: (entry, section) => {
      const list = childOf(node, entry);
      return list?.type === 'list' ? named(section, list) : undefined;
    },
    quantities: (entry, quantity) => {
      const list = childOf(node, entry);
      if (list?.type !== 'list') return undefined;
      const read = list.items.map((item) => (item?.type === 'scalar' ? readQuantity(item.text, quantity) : undefined));
      return read.every((reading) => reading?.ok) ? read.flatMap((reading) => (reading?.ok ? [reading.quantity] : [])) : undefined;
    },
    number: (entry) => {
      const written = text(entry);
      const kind = written === undefined ? undefined : memberQuantity(entry);
      if (written === undefined) return undefined;
      if (kind === undefined) return wholeNumber(written);
      const reading = readQuantity(written, kind);
      return reading.ok ? reading.quantity : undefined;
    },
  };
}

/** Quantity kinds of the entries of list members. Their maps are no scope of their own, since several of them stand side by side. */
const memberQuantities: Readonly<Record<string, QuantityKind>> = {
  mass: 'mass',
  ratio: 'ratio',
  efficiency: 'share',
  backlash: 'angle',
  'rotational-inertia': 'rotational-inertia',
  'torque-rating': 'torque',
  'torsional-stiffness': 'torsional-stiffness',
  'position-error': 'angle',
  width: 'length',
  'center-distance': 'length',
  tension: 'force',
  stiffness: 'stiffness',
  'tilt-stiffness': 'torsional-stiffness',
  offset: 'length',
  tilt: 'angle',
  'load-limit': 'force',
  float: 'length',
  acceleration: 'acceleration',
  accuracy: 'length',
  height: 'length',
  diameter: 'length',
  wall: 'length',
  area: 'area',
  'second-moment-upright': 'second-moment-of-area',
  'second-moment-sideways': 'second-moment-of-area',
  'torsion-constant': 'second-moment-of-area',
  'mass-per-length': 'linear-density',
  'joint-stiffness': 'torsional-stiffness',
  fastening: 'share',
  speed: 'rotational-speed',
  torque: 'torque',
};

const memberQuantity = (entry: string): QuantityKind | undefined => memberQuantities[entry];

function wholeNumber(text: string): Bounded | undefined {
  if (!/^\d{1,9}$/.test(text.trim())) return undefined;
  const nominal = Number(text);
  return { nominal, low: nominal, high: nominal };
}

/** The value of an entry; undefined when it cannot be read, 'not-a-value' when the entry is a map or list by design. */
function readEntry(node: SyntaxNode, id: string): InputValue | undefined | 'not-a-value' {
  if (node.type !== 'scalar') return 'not-a-value';
  const schema = entrySchema(id);
  if (schema?.quantity !== undefined) {
    const reading = readQuantity(node.text, schema.quantity);
    if (!reading.ok) return undefined;
    const { nominal, low, high, unit } = reading.quantity;
    return { type: 'number', nominal, low, high, unit };
  }
  if (schema?.type === 'integer') {
    const whole = wholeNumber(node.text);
    if (!whole) return undefined;
    const inRange = whole.nominal >= (schema.minimum ?? -Infinity) && whole.nominal <= (schema.maximum ?? Infinity);
    return inRange ? { type: 'number', ...whole } : undefined;
  }
  if (schema?.enum && !schema.enum.includes(node.text)) return undefined;
  return node.text === '' ? undefined : { type: 'choice', text: node.text };
}
