/**
 * A scope is a map of the description from which inputs are read: `screw` in a drive, the `motor` that it names,
 * the `motion` of its axis. An input is called `scope.entry`: `screw.lead`, `motor.holding-torque`.
 *
 * Each row says how one scope is found from another, so that a new kind of element is one row and no code.
 */
export interface ScopeRow {
  readonly id: string;
  /** What a person calls it. */
  readonly title: string;
  /** The kind of subject that has it: a drive sees its axis and machine too. */
  readonly subjects: readonly SubjectKind[];
  /** Found under this key of the first of these scopes that the subject has. */
  readonly within?: { readonly scope: string | readonly string[]; readonly key: string };
  /** The map may name a part of this kind by the key `part`, or (for `named`) the key's own text is the name. */
  readonly part?: { readonly kind: string; readonly by: 'part-key' | 'own-text' };
  /** The key's text names an entry of this section. */
  readonly section?: string;
  /** Where the schema describes the map: a path of keys from the top of the machine schema; `*` is any name. */
  readonly schema: readonly string[];
}

export type SubjectKind = 'machine' | 'drive' | 'heater' | 'supply';

const everywhere: readonly SubjectKind[] = ['machine', 'drive', 'heater', 'supply'];
const drive: readonly SubjectKind[] = ['drive'];
const inDrive = ['axes', '*', 'drive'];

export const scopeRows: readonly ScopeRow[] = [
  { id: 'machine', title: 'machine', subjects: everywhere, schema: [] },
  { id: 'conditions', title: 'conditions', subjects: everywhere, within: { scope: 'machine', key: 'conditions' }, schema: ['conditions'] },
  { id: 'controller', title: 'controller', subjects: everywhere, within: { scope: 'machine', key: 'controller' }, schema: ['controller'] },
  { id: 'axis', title: 'axis', subjects: drive, schema: ['axes', '*'] },
  { id: 'motion', title: 'motion', subjects: drive, within: { scope: 'axis', key: 'motion' }, schema: ['axes', '*', 'motion'] },
  { id: 'guides', title: 'guides', subjects: drive, within: { scope: 'axis', key: 'guides' }, schema: ['axes', '*', 'guides'] },
  { id: 'drive', title: 'drive', subjects: drive, schema: inDrive },
  { id: 'screw', title: 'screw', subjects: drive, within: { scope: 'drive', key: 'screw' }, part: { kind: 'screw', by: 'part-key' }, schema: [...inDrive, 'screw'] },
  { id: 'thrust-bearing', title: 'thrust bearing', subjects: drive, within: { scope: 'screw', key: 'thrust-bearing' }, schema: [...inDrive, 'screw', 'thrust-bearing'] },
  { id: 'nut', title: 'nut', subjects: drive, within: { scope: 'drive', key: 'nut' }, part: { kind: 'nut', by: 'part-key' }, schema: [...inDrive, 'nut'] },
  { id: 'coupling', title: 'coupling', subjects: drive, within: { scope: 'drive', key: 'coupling' }, part: { kind: 'coupling', by: 'part-key' }, schema: [...inDrive, 'coupling'] },
  { id: 'brake', title: 'brake', subjects: drive, within: { scope: 'drive', key: 'brake' }, part: { kind: 'brake', by: 'part-key' }, schema: [...inDrive, 'brake'] },
  { id: 'counterbalance', title: 'counterbalance', subjects: drive, within: { scope: 'drive', key: 'counterbalance' }, schema: [...inDrive, 'counterbalance'] },
  { id: 'motor', title: 'motor', subjects: drive, within: { scope: 'drive', key: 'motor' }, part: { kind: 'stepper', by: 'own-text' }, schema: ['parts', '*'] },
  { id: 'supply', title: 'supply', subjects: ['drive', 'heater', 'supply'], within: { scope: ['drive', 'heater'], key: 'supply' }, section: 'supplies', schema: ['supplies', '*'] },
  { id: 'heater', title: 'heated part', subjects: ['heater'], schema: ['heating', '*'] },
];

const byId = new Map(scopeRows.map((row) => [row.id, row]));

/** The row of a scope. Throws for an unknown scope: that is a slip in a declaration, not in a description. */
export function scopeRow(id: string): ScopeRow {
  const row = byId.get(id);
  if (!row) throw new Error(`No scope is called "${id}".`);
  return row;
}

/** Splits `screw.lead` into scope and entry; the scope may hold a hyphen, the entry too. */
export function splitInput(id: string): { readonly scope: string; readonly entry: string } {
  const dot = id.indexOf('.');
  return { scope: id.slice(0, dot), entry: id.slice(dot + 1) };
}
