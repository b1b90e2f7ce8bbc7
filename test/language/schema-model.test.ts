import { describe, expect, it } from 'vitest';
import { fileSchema, schemaAt, SchemaModel, type RawSchema, type SchemaNode } from '../../server/src/language/schema/schema-model.ts';
import { isQuantityKind } from '../../server/src/language/quantity-kinds.ts';
import { parseText } from '../../server/src/language/parse-text.ts';
import machineJson from '../../schemas/machine.schema.json' with { type: 'json' };

const fixture: RawSchema = {
  $id: 'fixture.schema.json',
  title: 'Fixture',
  type: 'object',
  required: ['name'],
  properties: {
    name: { title: 'Name', description: 'Its name.', type: 'string', examples: ['Heron', ['Egret', 'Stork']] },
    colour: { title: 'Colour', type: 'string', enum: ['red', 'green'], enumDescriptions: ['Like fire.', 'Like grass.'] },
    length: { title: 'Length', type: ['string', 'number'], quantity: 'length' },
    odd: { title: 'Odd', type: 'string', quantity: 'no-such-kind' },
    tools: { title: 'Tools', type: 'object', defines: 'tool', additionalProperties: { $ref: '#/$defs/tool' } },
    first: { $ref: '#/$defs/tool', title: 'First tool' },
    path: { title: 'Path', type: 'array', minItems: 2, maxItems: 3, items: { title: 'Point', type: 'string', refersTo: 'tool' } },
    turn: { title: 'Turn', anyOf: [{ type: 'string', enum: ['left', 'right'] }, { type: 'string', quantity: 'angle' }] },
  },
  $defs: {
    tool: { title: 'Tool', type: 'object', discriminator: { propertyName: 'kind' }, oneOf: [{ $ref: '#/$defs/saw' }, { $ref: '#/$defs/drill' }] },
    saw: { title: 'Saw', type: 'object', properties: { kind: { const: 'saw' }, teeth: { title: 'Teeth', type: 'integer', minimum: 1, maximum: 90 } } },
    drill: { title: 'Drill', type: 'object', properties: { kind: { const: 'drill' }, diameter: { title: 'Diameter', quantity: 'length' } } },
  },
};
const root = new SchemaModel([fixture]).root('fixture.schema.json');
const property = (node: SchemaNode, key: string): SchemaNode | undefined => node.properties.find((one) => one.key === key)?.schema;

describe('schema model', () => {
  it('has entries in writing order and knows which are required', () => {
    expect(root.properties.map((one) => one.key)).toEqual(['name', 'colour', 'length', 'odd', 'tools', 'first', 'path', 'turn']);
    expect(root.properties.filter((one) => one.required).map((one) => one.key)).toEqual(['name']);
  });

  it('has titles, examples, choices with their meaning, kinds of quantity', () => {
    expect(property(root, 'name')).toMatchObject({ title: 'Name', description: 'Its name.', examples: ['Heron', 'Egret', 'Stork'] });
    expect(property(root, 'colour')?.choices).toEqual([{ value: 'red', description: 'Like fire.' }, { value: 'green', description: 'Like grass.' }]);
    expect(property(root, 'length')?.quantity).toBe('length');
    expect(property(root, 'odd')?.quantity).toBeUndefined();
  });

  it('follows references, and what stands beside a reference goes first', () => {
    expect(property(root, 'first')?.title).toBe('First tool');
    expect(property(root, 'first')?.variants?.key).toBe('kind');
    expect(property(root, 'tools')?.defines).toBe('tool');
    expect(property(root, 'tools')?.named?.title).toBe('Tool');
  });

  it('knows the forms that an entry decides between', () => {
    const variants = property(root, 'tools')?.named?.variants;
    expect([...(variants?.of.keys() ?? [])]).toEqual(['saw', 'drill']);
    expect(variants?.of.get('saw')?.properties.map((one) => one.key)).toEqual(['kind', 'teeth']);
    expect(property(variants?.of.get('saw') ?? root, 'teeth')).toMatchObject({ minimum: 1, maximum: 90, types: ['integer'] });
  });

  it('knows items and alternatives', () => {
    expect(property(root, 'path')).toMatchObject({ minItems: 2, maxItems: 3 });
    expect(property(root, 'path')?.items?.refersTo).toBe('tool');
    expect(property(root, 'turn')?.alternatives.map((one) => one.quantity)).toEqual([undefined, 'angle']);
  });

  it('throws for what only a fault of the program can ask', () => {
    expect(() => new SchemaModel([fixture]).root('other.schema.json')).toThrow('no schema');
    const broken = new SchemaModel([{ $id: 'x', properties: { a: { $ref: '#/$defs/none' } } }]).root('x');
    expect(() => broken.properties).toThrow('leads nowhere');
  });
});

describe('schema of a machine', () => {
  const tree = parseText('axes:\n  lift:\n    drive:\n      motor: m\nparts:\n  m:\n    kind: stepper\n  s:\n    kind: screw\n  u: {}\nmasses:\n  plate: { at: [1, 2] }').root;

  it.each([
    [['axes', 'lift', 'travel'], 'Travel'],
    [['axes', 'lift', 'drive', 'motor'], 'Motor'],
    [['masses', 'plate', 'at', '1'], 'Coordinate'],
    [['parts', 'm', 'holding-torque'], 'Holding torque'],
    [['parts', 's', 'lead'], 'Lead'],
    [['parts', 's', 'holding-torque'], undefined],
    // Without its kind a part has no form yet.
    [['parts', 'u', 'lead'], undefined],
    [['parts', 'u'], 'Part'],
    [['parts', 'm'], 'Stepper motor'],
    [['axes', 'lift', 'travel', 'deeper'], undefined],
    [['nothing'], undefined],
    [[], 'Machine description'],
  ])('%j is %s', (path, title) => {
    expect(schemaAt('machine', path, tree)?.title).toBe(title);
  });

  it('serves part lists as well', () => {
    const list = parseText('parts:\n  m:\n    kind: stepper').root;
    expect(schemaAt('parts', ['parts', 'm', 'current'], list)?.title).toBe('Rated current');
    expect(fileSchema('parts').required).toContain('parts');
  });

  it('names only kinds of quantity that there are', () => {
    const unknown: string[] = [];
    const visit = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      for (const [key, inner] of Object.entries(value)) {
        if (key === 'quantity' && typeof inner === 'string' && !isQuantityKind(inner)) unknown.push(inner);
        visit(inner);
      }
    };
    visit(machineJson);
    expect(unknown).toEqual([]);
  });

  it('gives every entry a title and a meaning, and every choice its own', () => {
    const seen = new Set<SchemaNode>();
    const bare: string[] = [];
    const visit = (node: SchemaNode, path: string): void => {
      if (seen.has(node)) return;
      seen.add(node);
      for (const one of node.properties) {
        if (one.schema.title === '' || one.schema.description === '') bare.push(`${path}/${one.key}`);
        if (one.schema.choices.some((choice) => choice.description === '')) bare.push(`${path}/${one.key} (a choice)`);
        visit(one.schema, `${path}/${one.key}`);
      }
      for (const inner of [node.named, node.items, ...(node.variants?.of.values() ?? [])]) if (inner) visit(inner, `${path}/*`);
    };
    visit(fileSchema('machine'), '');
    visit(fileSchema('parts'), 'parts:');
    expect(bare).toEqual([]);
  });
});
