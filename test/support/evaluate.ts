import { Evaluation } from '../../server/src/figures/evaluation.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { Machine } from '../../server/src/machine/machine.ts';
import type { Subject } from '../../server/src/machine/subject.ts';
import { machineWith, yamlOf } from './machines.ts';

/** The subjects of a description. */
export function subjectsOf(text: string): readonly Subject[] {
  return new Machine(readDocument('file:///test.machine.yaml', text), []).subjects;
}

/** Evaluates the first subject of a kind in a base machine with some entries changed. */
export function evaluate(base: string, changes: Readonly<Record<string, unknown>> = {}, kind: Subject['kind'] = 'drive'): Evaluation {
  const subject = subjectsOf(yamlOf(machineWith(base, changes))).find((candidate) => candidate.kind === kind && candidate.chosen);
  if (!subject) throw new Error(`The machine has no ${kind}.`);
  return new Evaluation(subject, allFigures());
}

/** Nominal value of a figure, or the reason why there is none as an error. */
export function figureOf(evaluation: Evaluation, id: string): number {
  const result = evaluation.result(id);
  if (result.state === 'computed') return result.nominal;
  throw new Error(`${id}: ${JSON.stringify(result)}`);
}
