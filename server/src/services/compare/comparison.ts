import { figuresOf, type FigureRow } from '../figures-table.ts';
import type { Snapshot } from '../snapshot.ts';
import { acceptancesOf, type Acceptance } from '../record/acceptances.ts';
import { recordedFindings, type RecordedFinding } from '../record/finding-rows.ts';
import { costOf, partsOf, type Cost, type PartRow } from '../record/machine-parts.ts';
import { compareCost, type CostChange } from './cost-changes.ts';
import { compareFigures, type FigureChange } from './figure-changes.ts';
import { compareFindings, type FindingChange } from './finding-changes.ts';

/** As much of an analysed machine as a comparison needs: plain data. */
export interface MachineState {
  readonly machine: string;
  readonly figures: readonly FigureRow[];
  readonly findings: readonly RecordedFinding[];
  readonly accepted: readonly Acceptance[];
  readonly parts: readonly PartRow[];
  readonly cost: Cost;
}

/** What a change of a description did. Everything is in the order of the new text, what is gone in that of the old one. */
export interface Comparison {
  /** `new` and `gone`: there was no file before, or there is none now. */
  readonly state: 'changed' | 'unchanged' | 'new' | 'gone';
  readonly figures: readonly FigureChange[];
  readonly findings: readonly FindingChange[];
  readonly accepted: { readonly new: readonly Acceptance[]; readonly gone: readonly Acceptance[] };
  /** Findings of the new state by which somebody stands, changed or not. */
  readonly acceptedNow: readonly RecordedFinding[];
  readonly cost: CostChange;
}

const NOTHING: MachineState = { machine: '', figures: [], findings: [], accepted: [], parts: [], cost: { totals: [], unpriced: 0 } };

export function machineState(snapshot: Snapshot): MachineState {
  const { analysis, document } = snapshot;
  const figures = figuresOf(snapshot).filter((row) => row.chosen);
  const parts = analysis ? partsOf(analysis) : [];
  const name = document.root?.type === 'map' ? document.root.entries.find((entry) => entry.key.text === 'machine')?.value : undefined;
  return {
    machine: name?.type === 'scalar' ? name.text : '',
    figures,
    findings: recordedFindings(snapshot, figures),
    accepted: acceptancesOf(document.root),
    parts,
    cost: analysis ? costOf(parts, analysis) : { totals: [], unpriced: 0 },
  };
}

/** Compares two states of a machine; undefined stands for a file that is not there. Pure. */
export function compareMachines(before: MachineState | undefined, after: MachineState | undefined): Comparison {
  const [old, fresh] = [before ?? NOTHING, after ?? NOTHING];
  const figures = compareFigures(old.figures, fresh.figures);
  const findings = compareFindings(old.findings, fresh.findings);
  const cost = compareCost(old, fresh);
  const accepted = { new: without(fresh.accepted, old.accepted), gone: without(old.accepted, fresh.accepted) };
  const same = figures.length === 0 && findings.length === 0 && cost.parts.length === 0 && !cost.changed && accepted.new.length === 0 && accepted.gone.length === 0;
  const state = before === undefined ? 'new' : after === undefined ? 'gone' : same ? 'unchanged' : 'changed';
  return { state, figures, findings, accepted, acceptedNow: fresh.findings.filter((finding) => finding.accepted !== undefined), cost };
}

const keyOf = ({ check, at, reason, by, until }: Acceptance): string => JSON.stringify([check, at, reason, by, until]);

function without(some: readonly Acceptance[], others: readonly Acceptance[]): readonly Acceptance[] {
  const left = new Set(others.map(keyOf));
  return some.filter((one) => !left.has(keyOf(one)));
}
