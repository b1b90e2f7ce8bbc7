import { readUnitOfKind } from '../language/kind-units.ts';
import { nearestNames } from '../language/nearest-names.ts';
import { kindDetails, quantityKinds, type QuantityKind } from '../language/quantity-kinds.ts';
import { childOf, type SyntaxNode } from '../language/syntax-tree.ts';
import type { SourceDocument } from '../machine/machine.ts';
import type { Place } from '../machine/origin.ts';
import { adjusted, type Change } from './adjusted-check.ts';
import type { Check } from './check.ts';
import { meant, shortText, type EntryProblem } from './entry-problem.ts';
import { allChecks } from './registry.ts';

/** What holds for all descriptions of a repository. */
export interface RepositorySettings {
  readonly uri: string;
  readonly text: string;
  /** All checks as they judge here. */
  readonly checks: readonly Check[];
  /** Units in which figures are shown, by kind of quantity. */
  readonly units: ReadonlyMap<QuantityKind, string>;
  readonly failOn?: 'error' | 'warning' | 'information';
  /** Paths of part lists that every machine draws on, relative to the file. */
  readonly partLists: readonly string[];
  /** Patterns of files that the command line passes over, relative to the file. */
  readonly ignore: readonly string[];
  /** What is wrong with them, beyond their shape. What is wrong has no effect; the rest has. */
  readonly problems: readonly EntryProblem[];
}

const severities: readonly Change['severity'][] = ['error', 'warning', 'information', 'hint', 'off'];

/** Reads the settings of a repository. Never throws: what cannot be read counts as not written. */
export function readSettings({ uri, text, root }: SourceDocument): RepositorySettings {
  const problems: EntryProblem[] = [];
  const failOn = textOf(childOf(root, 'fail-on'));
  return {
    uri,
    text,
    checks: checksOf(childOf(root, 'checks'), uri, problems),
    units: unitsOf(childOf(root, 'units'), uri, problems),
    ...(failOn === 'error' || failOn === 'warning' || failOn === 'information' ? { failOn } : {}),
    partLists: itemsOf(childOf(root, 'part-lists')),
    ignore: itemsOf(childOf(root, 'ignore')),
    problems,
  };
}

const textOf = (node: SyntaxNode | null | undefined): string | undefined => (node?.type === 'scalar' && node.text !== '' ? node.text : undefined);

const itemsOf = (node: SyntaxNode | null | undefined): readonly string[] => (node?.type === 'list' ? node.items.flatMap((item) => textOf(item) ?? []) : []);

function checksOf(node: SyntaxNode | null | undefined, uri: string, problems: EntryProblem[]): readonly Check[] {
  if (node?.type !== 'map') return allChecks();
  const changed = new Map<string, Check | undefined>();
  for (const { key, value } of node.entries) {
    const place: Place = { uri, path: ['checks', key.text] };
    const check = allChecks().find(({ id }) => id === key.text);
    if (!check) {
      const near = nearestNames(key.text, allChecks().map(({ id }) => id));
      problems.push({ code: 'check-unknown', severity: 'error', place, onKey: true, message: `No check is called "${shortText(key.text)}", so this changes nothing.${meant(near)}`, replacements: near });
    } else if (!changed.has(key.text) && value?.type === 'map') {
      const result = adjusted(check, changeIn(value), place);
      problems.push(...result.problems);
      changed.set(key.text, result.check);
    }
  }
  return allChecks().flatMap((check) => (changed.has(check.id) ? (changed.get(check.id) ?? []) : [check]));
}

function changeIn(value: SyntaxNode): Change {
  const severity = severities.find((word) => word === textOf(childOf(value, 'severity')));
  const limit = textOf(childOf(value, 'limit'));
  const factor = textOf(childOf(value, 'limit-factor'));
  return { ...(severity === undefined ? {} : { severity }), ...(limit === undefined ? {} : { limit }), ...(factor === undefined ? {} : { factor }) };
}

/** Kinds of quantity that are shown like another one. */
const alike: Readonly<Partial<Record<QuantityKind, readonly QuantityKind[]>>> = { length: ['position'] };

function unitsOf(node: SyntaxNode | null | undefined, uri: string, problems: EntryProblem[]): ReadonlyMap<QuantityKind, string> {
  const units = new Map<QuantityKind, string>();
  if (node?.type !== 'map') return units;
  for (const { key, value } of node.entries) {
    const unit = textOf(value);
    if (unit === undefined || !isKind(key.text)) continue; // the schema reports it
    const kind = key.text;
    if (readUnitOfKind(unit, kind).ok) {
      for (const one of [kind, ...(alike[kind] ?? [])]) units.set(one, unit);
      continue;
    }
    const known = kindDetails(kind).units;
    problems.push({
      code: 'display-unit-unfit', severity: 'error', place: { uri, path: ['units', key.text] }, replacements: nearestNames(unit, known),
      message: `A ${kindDetails(kind).title} cannot be shown in "${shortText(unit, 20)}". Units that fit: ${known.slice(0, 6).join(', ')}.`,
    });
  }
  return units;
}

const isKind = (key: string): key is QuantityKind => Object.hasOwn(quantityKinds, key);

