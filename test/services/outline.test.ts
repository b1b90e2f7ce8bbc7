import { describe, expect, it } from 'vitest';
import { outlineOf, type OutlineItem } from '../../server/src/services/outline.ts';
import { example, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

/** The outline as indented lines: kind, name, detail. */
function lines(items: readonly OutlineItem[], indent = ''): string[] {
  return items.flatMap((item) => [`${indent}${item.kind} ${item.name}${item.detail === '' ? '' : ` (${item.detail})`}`, ...lines(item.children, `${indent}  `)]);
}

function checkSpans(items: readonly OutlineItem[], start: number, end: number): void {
  for (const item of items) {
    expect(item.span.start, item.name).toBeGreaterThanOrEqual(start);
    expect(item.span.end, item.name).toBeLessThanOrEqual(end);
    expect(item.selection.start).toBeGreaterThanOrEqual(item.span.start);
    expect(item.selection.end).toBeLessThanOrEqual(item.span.end);
    checkSpans(item.children, item.span.start, item.span.end);
  }
}

describe('outline', () => {
  it('goes from the machine to its axes, their drives and elements', () => {
    const text = [
      'machine: Heron', 'purpose: prints moulds', 'masses:', '  plate: { mass: 4 kg }', 'axes:', '  lift:', '    direction: vertical', '    travel: 300 mm', '    motion: { speed: 10 mm/s }', '    drive:', '      motor: lift-motor',
      '      screw: { size: Tr12x3 }', '      nut: { material: bronze }', '      brake:', 'parts:', '  lift-motor: { kind: stepper, frame: NEMA 17 }', 'notes: none', '',
    ].join('\n');
    const items = outlineOf(snapshotOf(text));
    expect(lines(items).map((line) => line.replace(/ · .*(?=\))/, ''))).toEqual([
      'machine Heron (prints moulds)',
      '  section masses',
      '    mass plate (4 kg)',
      '  section axes',
      '    axis lift (vertical, 300 mm)',
      '      element motion (10 mm/s)',
      '      drive drive (lift-motor)',
      '        element motor (lift-motor)',
      '        element screw (Tr12x3)',
      '        element nut (bronze)',
      '        element brake',
      '  section parts',
      '    part lift-motor (stepper, NEMA 17)',
    ]);
    checkSpans(items, 0, text.length);
  });

  it('says the figures that decide beside their element', () => {
    const all = lines(outlineOf(snapshotOf(yamlOf(machineWith('lift'))))).join('\n');
    expect(all).toMatch(/element screw \(Tr12x3, steel · .*\d.*\)/);
  });

  it('shows the options of a drive', () => {
    const text = 'machine: Heron\naxes:\n  lift:\n    drive-options:\n      thin: { motor: m }\n      thick:\n';
    expect(lines(outlineOf(snapshotOf(text))).map((line) => line.trim())).toEqual(['machine Heron', 'section axes', 'axis lift', 'section drive-options', 'drive thin (m)', 'element motor (m)', 'drive thick']);
  });

  it('is there while the text is half typed', () => {
    expect(lines(outlineOf(snapshotOf('axes:\n  lift:\n    dri\n  tilt:\n    travel: 3 mm\n    screw: { si')))).toEqual(['section axes', '  axis lift', '  axis tilt (3 mm)']);
    expect(outlineOf(snapshotOf(''))).toEqual([]);
    expect(outlineOf(snapshotOf('- a'))).toEqual([]);
    expect(outlineOf(snapshotOf('mach'))).toEqual([]);
  });

  it('of a part list begins with its name', () => {
    const text = 'list: workshop stock\nparts:\n  m: { kind: stepper }\n';
    expect(lines(outlineOf(snapshotOf(text, {}, 'file:///work/stock.parts.yaml')))).toEqual(['machine workshop stock', '  section parts', '    part m (stepper)']);
  });

  it('does not repeat what an alias repeats', () => {
    const text = 'machine: Heron\nmasses:\n  plate: &p { mass: 4 kg }\n  cradle: *p\n';
    const items = outlineOf(snapshotOf(text));
    checkSpans(items, 0, text.length);
    expect(lines(items).at(-1)).toBe('    mass cradle (4 kg)');
  });

  it('has places inside one another in the examples, with CR LF too', () => {
    for (const path of ['large-format-printer/first-draft.machine.yaml', 'inch-router/bench-router.machine.yaml']) {
      for (const text of [example(path), example(path).replaceAll('\n', '\r\n')]) {
        const items = outlineOf(snapshotOf(text));
        expect(lines(items).length).toBeGreaterThan(10);
        checkSpans(items, 0, text.length);
      }
    }
  });

  it('is limited in length', () => {
    const text = `machine: Heron\nmasses:\n${Array.from({ length: 6_000 }, (_, index) => `  m${index}: { mass: 1 kg }\n`).join('')}`;
    expect(lines(outlineOf(snapshotOf(text))).length).toBeLessThanOrEqual(5_002);
  });
});
