import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figureMarkdown, hoverAt } from '../../server/src/services/hover.ts';
import { atCursor, example, inside, snapshotOf } from '../support/cursor.ts';
import { evaluate } from '../support/evaluate.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));

/** The hover inside the first occurrence of `needle`, or an empty text. Blanks that hold a number and its unit together are plain ones here. */
function hover(text: string, needle: string, after = ''): string {
  return rawHover(text, needle, after).replace(/\u00a0/g, ' ');
}

const rawHover = (text: string, needle: string, after = ''): string => hoverAt(snapshotOf(text), inside(text, needle, after))?.markdown ?? '';

/** Titles in the first column of the first table of figures. */
function rowTitles(markdown: string): readonly string[] {
  const lines = markdown.split('\n');
  const from = lines.indexOf('| Figure | Value | Limit | Used |');
  const until = lines.findIndex((line, index) => index > from && !line.startsWith('| '));
  return lines.slice(from + 2, until < 0 ? undefined : until).map((line) => line.slice(2, line.indexOf(' |')).replace(/ \S+$/, ''));
}

describe('the hover of an element', () => {
  const text = lift({ 'screw.speed-limit': '300 rpm' });

  it('begins with the verdict as a full sentence', () => {
    expect(hover(text, 'screw:').split('\n')[0]).toMatch(/^\*\*The screw of "lift" (passes|fails|may fail) \d+ (checks )?of \d+( checks)?[.;*]/);
  });
  it('has a table of at most twelve rows and four columns with value, limit and use', () => {
    const rows = hover(text, 'screw:').split('\n').filter((line) => line.startsWith('| '));
    expect(rows[0]).toBe('| Figure | Value | Limit | Used |');
    expect(rows.length).toBeGreaterThan(3);
    expect(rows.length).toBeLessThanOrEqual(2 + 12);
    for (const row of rows) expect(row.replace(/\\\|/g, '').split('|')).toHaveLength(6);
  });
  it('compares a figure with its limit: 10 mm/s at a lead of 3 mm is 200 rpm of the 300 allowed', () => {
    // 10/3 turns a second × 60 = 200 rpm; 200/300 = 67 %.
    const row = hover(text, '300 rpm').split('\n').find((line) => line.startsWith('| Turning speed'));
    expect(row).toContain('| 200 rpm | at most 300 rpm | 67 % |');
  });
  it('says the lead with its formula and source', () => {
    // Tr12x3 is single-start: lead = pitch = 3 mm (ISO 2902).
    expect(hover(text, 'screw:')).toContain('**Lead:** `l = P · n_s`  \n`l = 3 mm · 1 = 3 mm`  \nTr12x3: ');
    expect(hover(text, 'screw:')).toContain('Source: standard size Tr12x3: ISO 2902');
    expect(hover(text, 'screw:')).toContain('| Lead *l* | 3 mm |  |  |');
  });
  it('gives formula and source of every figure that it shows', () => {
    const markdown = hover(text, 'screw:');
    const shown = markdown.split('\n').filter((line) => /^\| (?!Figure|:---)/.test(line) && !line.includes('| none: ')).length;
    const titles = markdown.split('\n').filter((line) => /^\| (?!Figure|:---)/.test(line) && !line.includes('| none: ')).map((line) => line.slice(2, line.indexOf(' |')).replace(/ \S+$/, ''));
    expect(titles).toHaveLength(shown);
    for (const title of titles) expect(markdown, title).toMatch(new RegExp(`\\*\\*${title}:\\*\\* \`(?:(?!\\n\\n)[^])*\\nSource: `));
  });
  it('says what was assumed, on what it rests and how to override it', () => {
    expect(hover(text, 'nut:')).toMatch(/\*\*Assumed\*\*, since it is not written:\n(?:- .+\n)*- thread friction 0\.\d+ \(0\.\d+ to 0\.\d+\); .+\. Write `nut\.friction` to override it\./);
  });
  it('says which entries are missing', () => {
    expect(hover(lift({ 'motion.speed': null }), 'screw:')).toMatch(/To compute .+, write .*`motion\.speed`/);
  });
  it('holds one plot at most, with a text that says what it shows', () => {
    for (const key of ['screw:', 'motor:', 'drive:', 'lift:']) expect(hover(text, key).match(/!\[/g)?.length ?? 0, key).toBeLessThanOrEqual(1);
    expect(hover(text, 'motor:')).toMatch(/!\[Torque over speed\. [^\]]+\d[^\]]+\]\(data:image\/svg\+xml;base64,[A-Za-z0-9+/=]+\)/);
  });
  it('is the same on the key, on the name of the part, and where the part is described', () => {
    const whole = hover(text, 'motor:', 'drive:');
    expect(whole).toContain('The motor of "lift"');
    const first = (markdown: string): string => markdown.split('\n')[0] ?? '';
    expect(first(hover(text, 'lift-motor'))).toBe(first(whole));
    expect(first(hover(text, 'lift-motor:', 'parts:'))).toBe(first(whole));
  });
  it('names the hazard in its fixed wording', () => {
    const drawn = example('large-format-printer/first-draft.machine.yaml');
    expect(hover(drawn, 'lift:')).toContain('**Caution:** Gravity-loaded axis: a load that is not held mechanically can fall when power is lost.');
    expect(hover(drawn, 'bed:')).toMatch(/\*\*Caution:\*\* Hot surface: /);
  });
  it('shows verdict, hazards and the decisive rows in the first screenful', () => {
    const drawn = example('large-format-printer/first-draft.machine.yaml');
    const leading: Readonly<Record<string, readonly string[]>> = {
      'screw:': ['With power off', 'Use of the whirl speed', 'Safety against buckling', 'Efficiency of the thread', 'Lead'],
      'motor:': ['Torque margin', 'Corner speed'],
    };
    for (const [key, titles] of Object.entries(leading)) {
      const markdown = hover(drawn, key, 'drive:');
      const above = markdown.slice(0, markdown.indexOf('| Figure |'));
      // At 500 px some 70 characters go on a line: four lines, and the table begins at half of 250 px.
      const lines = above.trim().split('\n').reduce((sum, line) => sum + Math.ceil(line.length / 70), 0);
      expect(lines, above).toBeLessThanOrEqual(4);
      expect(above).toMatch(/ {2}\n\*\*Caution:\*\* gravity-loaded axis( and pinch point)?; see below the table\.\n/);
      expect([...rowTitles(markdown)].slice(0, titles.length).sort(), key).toEqual([...titles].sort());
    }
  });
  it('says in the first line of a good verdict how many checks wait for entries', () => {
    const waiting = hover(lift({ 'motion.speed': null }), 'screw:').split('\n')[0];
    expect(waiting).toMatch(/^\*\*The screw of "lift" (passes \d+ checks? of \d+|cannot be checked yet)\.\*\* \d+ more checks? waits? for entries that are missing\.$/);
  });
  it('has figures without a value behind those with one', () => {
    // Nothing pulls on a level axis at rest, so it has no holding verdict.
    const rows = hover(yamlOf(machineWith('router')), 'screw:').split('\n').filter((line) => line.startsWith('| '));
    expect(rows[2]).not.toContain('| none: ');
    expect(rows.some((row) => row.startsWith('| With power off') && row.includes('| none: '))).toBe(true);
  });
  it('says in the verdict every failure of its own figures that the table shows', () => {
    const drawn = example('large-format-printer/first-draft.machine.yaml');
    // The motor's torque margin is underlined at the speed, outside of the motor, and is the motor's affair all the same.
    expect(hover(drawn, 'motor:', 'drive:')).toMatch(/^\*\*The motor of "lift" fails \d+ of \d+ checks\.\*\* Motor has /);
    for (const key of ['screw:', 'nut:', 'motor:', 'coupling:', 'drive:', 'lift:']) {
      const markdown = hover(drawn, key);
      if (/\| [^|]*fails \|$/m.test(markdown)) expect(markdown, key).toMatch(/^\*\*[^*]+ fails \d|^\*\*It has a part in:/m);
    }
  });
  it('has the hazards in full right below the table, then the findings with their cures', () => {
    const drawn = hover(example('large-format-printer/first-draft.machine.yaml'), 'screw:');
    const places = ['| Figure |', '**Caution:** Gravity-loaded axis: a load', '**Caution:** Pinch point: ', '**Findings**\n- Axis drops with power off: ', 'Fit a brake or counterbalance', '`S_k = F_cr / F_d`', '![', '**Assumed**'].map((part) => drawn.indexOf(part));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });
  it('keeps a number, its unit and its range on one line', () => {
    const row = rawHover(text, '300 rpm').split('\n').find((line) => line.startsWith('| Turning speed'));
    expect(row).toContain('| at\u00a0most\u00a0300\u00a0rpm |');
  });
  it('gives a formula of several cases a line for each, with the numbers behind', () => {
    expect(hover(example('large-format-printer/first-draft.machine.yaml'), 'screw:')).toMatch(/\*\*With power off:\*\* `holds: [^`;]+` {2}\n`may creep: [^`;]+` {2}\n`else drops` {2}\nwith d₂ = 7 mm/);
  });
  it('never says that anything is safe', () => {
    const drawn = example('large-format-printer/first-draft.machine.yaml');
    for (const key of ['lift:', 'screw:', 'nut:', 'motor:', 'drive:', 'coupling:', 'bed:']) expect(hover(drawn, key)).not.toMatch(/\b(is|are) safe\b/i);
  });
  it('computes an option that is not chosen, without judging it', () => {
    const machine = machineWith('lift');
    const axis = (machine['axes'] as Record<string, Record<string, unknown>>)['lift'] as Record<string, unknown>;
    axis['drive-options'] = { strong: axis['drive'], weak: structuredClone(axis['drive']) };
    axis['chosen-drive'] = 'strong';
    delete axis['drive'];
    const options = yamlOf(machine);
    expect(hover(options, 'screw:', 'weak:')).toMatch(/^\*\*The screw of "lift", drive option "weak" is an option that is not chosen/);
    expect(hover(options, 'screw:', 'strong:')).toMatch(/^\*\*The screw of "lift", drive option "strong" (passes|fails|may fail)/);
    // A part that both share speaks for the chosen one and names the other.
    expect(hover(options, 'lift-motor:', 'parts:')).toContain('Also used by "lift" with drive option "weak" (not chosen).');
  });
});

describe('the hover of a value', () => {
  it('gives the meaning, the value in SI with its range, and what depends on it', () => {
    const markdown = hover(lift({ 'motion.speed': '60 mm/s ± 10 %' }), '60 mm/s');
    expect(markdown).toContain('**Speed:** Highest speed of a normal move.');
    expect(markdown).toContain('In SI units 0.06 m/s (nominal), from 0.054 m/s to 0.066 m/s.');
    expect(markdown).toContain('Used by "lift".');
    expect(markdown).toContain('| Figure | Value | Limit | Used |');
  });
  it('says what is due where the unit is of another kind', () => {
    expect(hover(lift({ 'motion.speed': '60 kg' }), '60 kg')).toMatch(/^\*\*Speed:\*\* [^\n]+\n\nA speed, such as `[^`]+`/);
    expect(hover(lift({ 'motion.speed': '60 mm/s' }), '60 mm/s')).not.toContain('A speed, such as');
  });
  it('knows what rests on a mass by way of the axis that moves it', () => {
    for (const [needle, after] of [['4 kg', ''], ['plate', 'moves:'], ['plate:', '']] as const) expect(hover(lift(), needle, after), needle).toContain('Used by "lift"');
  });
  it('says of a shared map, such as a supply or the controller, what rests on its entries', () => {
    for (const [needle, after] of [['controller:', ''], ['main:', 'supplies:'], ['supply: main', ''], ['motion:', '']] as const) {
      // A supply is looked at by itself too, since the loads on it are summed up.
      expect(hover(lift(), needle, after), needle).toMatch(/Used by "lift"( and "the machine")?\. What depends on it, decisive figures first:/);
    }
    expect(hover(lift(), 'masses:')).toBe('**Masses** `masses`: Bodies that the axes move, by name.');
  });
  it('describes a word of a list on the word, and all of them on its key', () => {
    expect(hover(lift(), 'fixed-supported')).toContain('`fixed-supported`: Motor end held stiffly, far end in one bearing that may float.');
    expect(hover(lift(), 'end-supports')).toContain('| `fixed-fixed` | Both ends held stiffly. |');
  });
  it('says of the kind of a part what such a part is', () => {
    expect(hover(lift(), 'stepper')).toContain('Stepper motor: A two-phase hybrid stepper motor.');
  });
  it('leads with the figure that is held against the value itself', () => {
    // 10 mm/s over 3 mm is 200 rpm.
    const rows = hover(lift({ 'screw.speed-limit': '300 rpm' }), '300 rpm').split('\n').filter((line) => line.startsWith('| '));
    expect(rows[2]).toMatch(/^\| Turning speed \*n\* \| 200 rpm/);
  });
  it('decodes a trapezoidal designation', () => {
    // Tr8x8(P2): d = 8, P = 2, 4 starts, lead 8 (ISO 2902); d2 = d − P/2 = 7; d3 = d − P − 2 · 0.25 = 5.5 (ISO 2901), ± 0.2 mm since ISO 2904 does not list the pair.
    const markdown = hover(lift({ 'screw.size': 'Tr8x8(P2)' }), 'Tr8x8');
    expect(markdown).toContain('is a right-hand trapezoidal thread of 8 mm diameter with 4 starts, 8 mm of travel in a turn.');
    expect(markdown).toContain('- Thread, major diameter, pitch, starts and lead. Source: ISO 2902');
    for (const row of ['| Pitch P | 2 mm |', '| Lead l | 8 mm |', '| Pitch diameter d₂ | 7 mm (6.8 to 7.2)', '| Root diameter d₃ | 5.5 mm (']) expect(markdown).toContain(row);
  });
  it('decodes a left-hand designation and a ball screw size', () => {
    expect(hover(lift({ 'screw.size': 'Tr12x3 LH' }), 'Tr12x3')).toContain('is a left-hand trapezoidal thread of 12 mm diameter with a single start, 3 mm of travel');
    expect(hover(yamlOf(machineWith('ball-lift')), '1605')).toContain('is a ball screw of 16 mm nominal diameter, 5 mm of travel in a turn.');
  });
  it('decodes in a part list too, where nothing is computed', () => {
    const text = 'description-version: 1\nparts:\n  spare:\n    kind: screw\n    size: Tr10x2\n';
    const found = hoverAt(snapshotOf(text, {}, 'file:///work/stock.parts.yaml'), inside(text, 'Tr10x2'));
    expect(found?.markdown).toContain('trapezoidal thread of 10 mm diameter');
  });
  it('is nothing between entries, in remarks and in an empty text', () => {
    const { text, offset } = atCursor('machine: Test\n\n# a |remark\naxes:\n');
    expect(hoverAt(snapshotOf(text), offset)).toBeUndefined();
    expect(hoverAt(snapshotOf(''), 0)).toBeUndefined();
  });
  it('covers exactly the value with °, µ, Ø and an emoji before it, and with CR LF', () => {
    const { text, offset } = atCursor('machine: "Ø 😀 µ °"\r\naxes:\r\n  "lift":\r\n    direction: vertical\r\n    motion: { speed: 1|5 mm/s } # 20 °C µm Ø\r\n');
    const found = hoverAt(snapshotOf(text), offset);
    expect(text.slice(found?.span.start, found?.span.end)).toBe('15 mm/s');
    expect(found?.markdown).toContain('In SI units 0.015 m/s.');
  });
});

describe('what comes from a file', () => {
  const evil = ['<script>alert(1)</script>', '[x](command:run)', '![x](http://a.b)', 'a|b', '`a`', '**b**', '$(zap)', '<img src=x>'];

  /** The hovers over everything in a text. */
  function allHovers(text: string): string {
    const snapshot = snapshotOf(text);
    const seen = new Set<string>();
    for (let offset = 0; offset <= text.length; offset++) seen.add(hoverAt(snapshot, offset)?.markdown ?? '');
    return [...seen].join('\n');
  }

  it('never comes out as HTML, link, picture, code or cell', () => {
    const name = JSON.stringify(evil.join(' '));
    const text = [
      'axes:', `  ${name}:`, '    direction: vertical', `    moves: [${name}]`, '    motion: { speed: 10 mm/s, acceleration: 1 m/s² }',
      `    drive: { motor: ${name}, supply: ${name}, screw: { size: ${name}, part: ${name}, material: ${name} }, nut: { material: ${name}, design: ${name} } }`,
      `masses: { ${name}: { mass: 4 kg } }`, `supplies: { ${name}: { voltage: 24 V } }`, `heating: { ${name}: { power: 5 W, supply: ${name} } }`,
      'parts:', `  ${name}: { kind: stepper, holding-torque: ${name}, current: 1 A }`, '',
    ].join('\n');
    const markdown = allHovers(text);
    expect(markdown.length).toBeGreaterThan(500);
    expect(markdown).not.toMatch(/<script|<img/);
    expect(markdown).not.toMatch(/(?<!\\)\]\(command:/);
    expect(markdown).not.toMatch(/!\[x(?<!\\)\]/);
    expect(markdown).not.toMatch(/(?<!\\)\*\*b(?!\\)\*\*/);
  });
  it('never adds a cell to a table', () => {
    const text = lift({ 'screw.material': 'a|b', 'nut.lubrication': 'c|d', 'screw.size': 'Tr8x8|x' });
    for (const line of allHovers(text).split('\n').filter((row) => row.startsWith('| '))) {
      const cells = line.replace(/\\\|/g, '').split('|').length - 2;
      expect([2, 3, 4], line).toContain(cells);
    }
  });
  it('never makes a hover throw, whatever is typed', () => {
    const text = example('large-format-printer/first-draft.machine.yaml');
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(30), fc.string({ maxLength: 8 }), fc.nat(text.length), (at, cut, typed, offset) => {
        const edited = text.slice(0, at) + typed + text.slice(at + cut);
        const found = hoverAt(snapshotOf(edited), Math.min(offset, edited.length));
        if (found) expect(found.span.end).toBeGreaterThanOrEqual(found.span.start);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the derivation of a figure', () => {
  it('shows formula, numbers, terms with their origins, and the source', () => {
    const evaluation = evaluate('lift', { 'motion.speed': '10 mm/s', 'screw.size': 'Tr12x3' });
    const figure = evaluation.registry.get('screw.turning-speed');
    if (!figure) throw new Error('The figure is gone.');
    const markdown = figureMarkdown(evaluation, figure, 0);
    // n = v/l = 10 mm/s / 3 mm = 3.33 turns a second = 200 rpm.
    expect(markdown).toContain('**Turning speed** `n` = **200 rpm**');
    expect(markdown).toContain('`n = v / l`  \n`n = (10 mm/s) / (3 mm) = 200 rpm`');
    expect(markdown).toContain('| 10 mm/s | written here |');
    expect(markdown).toMatch(/\| Lead l \| 3 mm \| standard size Tr12x3: /);
    expect(markdown).toContain('Source: ');
  });
  it('unfolds the figures among its terms by the depth asked for', () => {
    const evaluation = evaluate('lift');
    const figure = evaluation.registry.get('drive.lifting-load');
    if (!figure) throw new Error('The figure is gone.');
    // F₂ rests on F₁ (steady speed), and that on F₀ (at rest).
    expect(figureMarkdown(evaluation, figure, 0)).not.toContain('**Load at steady speed**');
    expect(figureMarkdown(evaluation, figure, 1)).toContain('**Load at steady speed**');
    expect(figureMarkdown(evaluation, figure, 1)).not.toContain('**Load at rest**');
    expect(figureMarkdown(evaluation, figure, 2)).toContain('**Load at rest**');
  });
  it('says what is missing', () => {
    const evaluation = evaluate('lift', { 'motion.speed': null });
    const figure = evaluation.registry.get('screw.turning-speed');
    if (!figure) throw new Error('The figure is gone.');
    expect(figureMarkdown(evaluation, figure)).toContain('cannot be computed yet: write `motion.speed`');
  });
});
