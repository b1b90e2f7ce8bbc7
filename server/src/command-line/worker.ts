import type { MessagePort } from 'node:worker_threads';
import { FileChecker, type CheckSetup } from './file-checker.ts';
import type { Done, Job } from './pool.ts';

/** What a worker of the pool does: it checks each file that it is told, one after another. */
export function serveChecks(port: MessagePort, setup: CheckSetup): void {
  const checker = new FileChecker(setup);
  port.on('message', ({ index, file }: Job) => {
    port.postMessage({ index, checked: checker.check(file) } satisfies Done);
  });
}
