import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';
import { describe, expect, it } from 'vitest';
import { findingsOf, allChecks } from '../../server/src/checks/registry.ts';
import type { Check } from '../../server/src/checks/check.ts';
import { Fence, type Requests } from '../../server/src/protocol/fence.ts';
import { Snapshots } from '../../server/src/services/snapshot.ts';
import { sample } from './support/sample.ts';

type Handler = (...args: unknown[]) => unknown;

/** A connection that does nothing but keep the handlers. */
function fenced(): { fence: Fence; log: string[]; ask: (method: string, ...args: unknown[]) => Promise<unknown>; tell: (method: string, ...args: unknown[]) => void } {
  const handlers = new Map<string, Handler>();
  const requests: Requests = { onRequest: (method, handler) => handlers.set(method, handler), onNotification: (method, handler) => handlers.set(method, handler) };
  const log: string[] = [];
  const fence = new Fence(requests, (line) => log.push(line));
  return {
    fence,
    log,
    ask: async (method, ...args) => handlers.get(method)?.(...args),
    tell: (method, ...args) => void handlers.get(method)?.(...args),
  };
}

const token = (isCancellationRequested = false): CancellationToken => ({ isCancellationRequested, onCancellationRequested: () => ({ dispose: () => undefined }) });

describe('the fence', () => {
  it('turns a throw into an empty answer and one line, however often it happens', async () => {
    const { fence, log, ask } = fenced();
    fence.request('a', 'empty', () => {
      throw new Error('first line\nsecond line');
    });
    for (let i = 0; i < 5; i++) expect(await ask('a', {}, token())).toBe('empty');
    expect(log).toHaveLength(1);
    expect(log[0]).toMatch(/^a failed: first line second line/);
    expect(log[0]).not.toContain('\n');
  });

  it('does so for a promise that fails, and for things thrown that are no errors', async () => {
    const { fence, log, ask } = fenced();
    fence.request('a', null, () => Promise.reject(new Error('late')));
    fence.request('b', [], async () => {
      throw 'a word'; // eslint-disable-line @typescript-eslint/only-throw-error -- what a careless library does
    });
    expect(await ask('a', {}, token())).toBeNull();
    expect(await ask('b', {}, token())).toEqual([]);
    expect(log).toHaveLength(2);
  });

  it('gives parameters that were not sent as undefined', async () => {
    const { fence, ask } = fenced();
    fence.request('a', null, (params) => [params]);
    expect(await ask('a', token())).toEqual([undefined]);
    expect(await ask('a', { x: 1 }, token())).toEqual([{ x: 1 }]);
  });

  it('lets errors pass that are meant for the client, without a line', async () => {
    const { fence, log, ask } = fenced();
    const meant = new ResponseError(LSPErrorCodes.ContentModified, 'changed');
    fence.request('a', null, () => {
      throw meant;
    });
    expect(await ask('a', {}, token())).toBe(meant);
    expect(log).toEqual([]);
  });

  it('answers a cancelled request as cancelled, whatever came out', async () => {
    const { fence, ask } = fenced();
    fence.request('a', null, () => 'result');
    expect(await ask('a', {}, token(true))).toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  });

  it('survives notices that throw, at once or later', async () => {
    const { fence, log, tell } = fenced();
    fence.notification('a', () => {
      throw new Error('at once');
    });
    fence.notification('b', () => Promise.reject(new Error('later')));
    tell('a', {});
    tell('b');
    await new Promise((resolve) => setTimeout(resolve, 0));
    expect(log.map((line) => line.slice(0, 12))).toEqual(['a failed: at', 'b failed: la']);
    expect(fence.received).toBe(2);
  });
});

describe('a check that throws', () => {
  it('becomes a finding that asks for a report, and the others still speak', () => {
    const uri = 'file:///heron.machine.yaml';
    const { analysis } = new Snapshots(() => undefined).take(uri, sample);
    const evaluation = analysis?.evaluations.find(({ subject }) => subject.kind === 'drive');
    if (!evaluation) throw new Error('the sample has no drive');
    const broken: Check = {
      id: 'broken', title: 'Broken', summary: '', place: 'screw', basis: 'our threshold', sources: [],
      judge: () => {
        throw new Error('division of a fish by zero');
      },
      message: () => '',
    };
    const whole = findingsOf(evaluation);
    const findings = findingsOf(evaluation, [broken, ...allChecks()]);
    expect(findings[0]).toMatchObject({ check: 'broken', severity: 'information' });
    expect(findings[0]?.message).toContain('division of a fish by zero');
    expect(findings.slice(1)).toEqual(whole);
    expect(whole.length).toBeGreaterThan(0);
  });
});
