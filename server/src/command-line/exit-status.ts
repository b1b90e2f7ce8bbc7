/** What the process tells its caller. */
export const exitStatus = { passed: 0, findings: 1, couldNotRun: 2 } as const;

export type ExitStatus = (typeof exitStatus)[keyof typeof exitStatus];

/** Severities that a threshold may name, gravest first. */
export const thresholds = ['error', 'warning', 'information'] as const;

export type Threshold = (typeof thresholds)[number];

const order: readonly string[] = ['error', 'warning', 'information', 'hint'];

/** 0 for the gravest. */
export const gravity = (severity: string): number => order.indexOf(severity);

export const reaches = (severity: string, threshold: Threshold): boolean => gravity(severity) <= gravity(threshold);

/** The one table of exit statuses; the help and the README show it. */
export const exitStatusTable = `Exit status:
  0  nothing at or above the threshold (--fail-on)
  1  at least one finding at or above the threshold
  2  could not run: a wrong option, a path or pattern that matches nothing,
     a file that cannot be read, or a fault of the tool; what could be read
     is checked and shown all the same`;

export const thresholdTable = `Threshold (--fail-on):
  error        it cannot work, or it is dangerous (the default: what is left
               below it is a matter of judgement)
  warning      also what lies outside of safe practice
  information  also what is only worth knowing`;
