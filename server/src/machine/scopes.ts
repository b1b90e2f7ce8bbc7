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
  readonly part?: { readonly kinds: readonly string[]; readonly by: 'part-key' | 'own-text' };
  /** The key's text names an entry of this section. */
  readonly section?: string;
  /** The section's only entry is not taken where none is named. */
  readonly byNameOnly?: boolean;
  /** Belongs to drives of this kind alone: a drive with a belt has no nut, whatever is known of nuts in general. */
  readonly of?: Transmission;
  /** Where the schema describes the map: a path of keys from the top of the machine schema; `*` is any name. */
  readonly schema: readonly string[];
}

/** What turns the turning of a shaft into travel. */
export type Transmission = 'screw' | 'belt' | 'rack';

export type SubjectKind = 'machine' | 'drive' | 'heater' | 'supply';

const everywhere: readonly SubjectKind[] = ['machine', 'drive', 'heater', 'supply'];
const drive: readonly SubjectKind[] = ['drive'];
const inDrive = ['axes', '*', 'drive'];
const partOf = (kind: string) => ({ kinds: [kind], by: 'part-key' }) as const;

export const scopeRows: readonly ScopeRow[] = [
  { id: 'machine', title: 'machine', subjects: everywhere, schema: [] },
  { id: 'conditions', title: 'conditions', subjects: everywhere, within: { scope: 'machine', key: 'conditions' }, schema: ['conditions'] },
  { id: 'controller', title: 'controller', subjects: everywhere, within: { scope: 'machine', key: 'controller' }, schema: ['controller'] },
  { id: 'frame', title: 'frame', subjects: ['machine'], within: { scope: 'machine', key: 'frame' }, schema: ['frame'] },
  { id: 'frame-box', title: 'box frame', subjects: ['machine'], within: { scope: 'frame', key: 'box' }, schema: ['frame', 'box'] },
  { id: 'frame-gantry', title: 'gantry beam', subjects: ['machine'], within: { scope: 'frame', key: 'gantry' }, schema: ['frame', 'gantry'] },
  { id: 'axis', title: 'axis', subjects: drive, schema: ['axes', '*'] },
  { id: 'motion', title: 'motion', subjects: drive, within: { scope: 'axis', key: 'motion' }, schema: ['axes', '*', 'motion'] },
  { id: 'guides', title: 'guides', subjects: drive, within: { scope: 'axis', key: 'guides' }, schema: ['axes', '*', 'guides'] },
  { id: 'supports', title: 'support layout', subjects: drive, within: { scope: 'axis', key: 'supports' }, schema: ['axes', '*', 'supports'] },
  { id: 'carried-part', title: 'carried part', subjects: drive, within: { scope: 'axis', key: 'carried-part' }, schema: ['axes', '*', 'carried-part'] },
  { id: 'levelling', title: 'levelling', subjects: drive, within: { scope: 'axis', key: 'levelling' }, schema: ['axes', '*', 'levelling'] },
  { id: 'drive', title: 'drive', subjects: drive, schema: inDrive },
  { id: 'screw', title: 'screw', subjects: drive, of: 'screw', within: { scope: 'drive', key: 'screw' }, part: partOf('screw'), schema: [...inDrive, 'screw'] },
  { id: 'thrust-bearing', title: 'thrust bearing', subjects: drive, of: 'screw', within: { scope: 'screw', key: 'thrust-bearing' }, schema: [...inDrive, 'screw', 'thrust-bearing'] },
  { id: 'nut', title: 'nut', subjects: drive, of: 'screw', within: { scope: 'drive', key: 'nut' }, part: partOf('nut'), schema: [...inDrive, 'nut'] },
  { id: 'belt', title: 'belt', subjects: drive, of: 'belt', within: { scope: 'drive', key: 'belt' }, part: partOf('belt'), schema: [...inDrive, 'belt'] },
  { id: 'pulley', title: 'pulley', subjects: drive, of: 'belt', within: { scope: 'drive', key: 'pulley' }, part: partOf('pulley'), schema: [...inDrive, 'pulley'] },
  { id: 'idlers', title: 'idlers', subjects: drive, of: 'belt', within: { scope: 'drive', key: 'idlers' }, schema: [...inDrive, 'idlers'] },
  { id: 'rack', title: 'rack', subjects: drive, of: 'rack', within: { scope: 'drive', key: 'rack' }, part: partOf('rack'), schema: [...inDrive, 'rack'] },
  { id: 'pinion', title: 'pinion', subjects: drive, of: 'rack', within: { scope: 'drive', key: 'pinion' }, part: partOf('pinion'), schema: [...inDrive, 'pinion'] },
  { id: 'coupling', title: 'coupling', subjects: drive, within: { scope: 'drive', key: 'coupling' }, part: partOf('coupling'), schema: [...inDrive, 'coupling'] },
  { id: 'brake', title: 'brake', subjects: drive, within: { scope: 'drive', key: 'brake' }, part: partOf('brake'), schema: [...inDrive, 'brake'] },
  { id: 'counterbalance', title: 'counterbalance', subjects: drive, within: { scope: 'drive', key: 'counterbalance' }, schema: [...inDrive, 'counterbalance'] },
  { id: 'motor', title: 'motor', subjects: drive, within: { scope: 'drive', key: 'motor' }, part: { kinds: ['stepper', 'dc-motor', 'brushless'], by: 'own-text' }, schema: ['parts', '*'] },
  // The layout and the other axis of two that share their motors; only where there is such a layout.
  { id: 'layout', title: 'layout', subjects: drive, schema: ['layout'] },
  { id: 'partner', title: 'other axis', subjects: drive, schema: ['axes', '*'] },
  { id: 'partner-motion', title: 'motion of the other axis', subjects: drive, within: { scope: 'partner', key: 'motion' }, schema: ['axes', '*', 'motion'] },
  { id: 'partner-guides', title: 'guides of the other axis', subjects: drive, within: { scope: 'partner', key: 'guides' }, schema: ['axes', '*', 'guides'] },
  // The axis that rides on this one.
  { id: 'carried', title: 'axis that is carried', subjects: drive, within: { scope: 'drive', key: 'carries' }, section: 'axes', byNameOnly: true, schema: ['axes', '*'] },
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
