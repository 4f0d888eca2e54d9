import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Ink, type Shelf, shelfSchema } from '../../../src/graph/inks.ts';
import { parseShelf, shelfCsv, shelfJson } from '../../../src/graph/shelf.ts';
import { DEMO_SHELF } from '../../../src/ink/demo-inks.ts';

const CSV = 'inks.csv';
const inksOf = (text: string, name = CSV): Ink[] => parseShelf(text, name).inks;
const SOOT: Ink = { id: 'soot', name: 'Soot', lab: [20, 1, 1], opacity: 0.02 };

describe('a shelf in JSON', () => {
  it('is read back as it was written', () => {
    expect(parseShelf(shelfJson(DEMO_SHELF), 'shelf.json')).toEqual(DEMO_SHELF);
  });

  it('may be a list with anything beside it, as the demo inks of the design are', () => {
    const text = readFileSync(new URL('demo-inks.json', import.meta.url), 'utf8');
    expect(parseShelf(text, 'demo-inks.json')).toEqual(DEMO_SHELF);
  });

  it('may be an ink file, whose paper it takes', () => {
    const paper = { lab: [66, 8, 22], surface: 'coated' };
    const file = { paper, takeUp: 0.9, inks: [SOOT], measured: [{ inks: ['soot'], lab: [21, 0, 0] }] };
    expect(parseShelf(JSON.stringify(file), 'a')).toEqual({ ...DEMO_SHELF, paper, inks: [SOOT] });
  });

  it('may be a plain list, and makes ids of names', () => {
    const text = `\uFEFF [{"name":"Brûlée No. 2","hex":"#A06030"}]`;
    expect(inksOf(text, 'a.txt')).toEqual([
      { id: 'brulee-no-2', name: 'Brûlée No. 2', hex: '#A06030', opacity: 0.005 },
    ]);
  });

  it.each([
    ['{"inks":', 'this is not valid JSON'],
    ['{}', 'there is no list of inks; put them under "inks"'],
    ['null', 'there is no list of inks'],
    ['[7]', 'inks.0: '],
    ['{"inks":[]}', 'the list holds no inks'],
    ['{"inks":[{"id":"a","name":"A"}]}', 'inks.0: give the colour once'],
    ['{"inks":[{"id":"a","name":"A","hex":"#000000","shine":1}]}', 'inks.0: unknown "shine"'],
    ['{"inks":[{"name":"A","hex":"#000000"},{"name":"a","hex":"#ffffff"}]}', 'two inks are called "a"'],
    ['{"inks":[{"__proto__":{"x":1},"name":"A","hex":"#000000"}]}', 'a field named "__proto__"'],
    ['{"paper":{"lab":[95,0,0],"surface":"wet"},"inks":[{"name":"A","hex":"#000000"}]}', 'paper.surface'],
  ])('is refused where it says %s', (text, message) => {
    expect(() => parseShelf(text, 'a.json')).toThrow(message);
  });
});

describe('a shelf in CSV', () => {
  it('has a row an ink, columns in any order and case, empty fields and rows left out', () => {
    const text =
      'Name,ID,l,A,b,note,Opacity\n\nSoot,soot,20,1,1,"black, ""warm""",0.02\n,,,,,,\nPale,,90,0,-1\n';
    expect(inksOf(text)).toEqual([
      { ...SOOT, note: 'black, "warm"' },
      { id: 'pale', name: 'Pale', lab: [90, 0, -1], opacity: 0.005 },
    ]);
  });

  it('may have semicolons, decimal commas, a byte order mark and other line ends', () => {
    const text = '\uFEFFid;name;L;a;b;opacity\r\nsoot;Soot;20,5;-1,25;"1";0,02\r\n';
    expect(inksOf(text)).toEqual([{ ...SOOT, lab: [20.5, -1.25, 1] }]);
  });

  it('may have tabs and hex colours', () => {
    expect(inksOf('name\thex\nSoot\t#20201e\n')).toEqual([
      { id: 'soot', name: 'Soot', hex: '#20201e', opacity: 0.005 },
    ]);
  });

  it.each([
    ['', 'there is no column'],
    ['soot,20,1,1', 'row 1: there is no column "soot"; known are id, name'],
    ['id,L,a,b\nsoot,20,1,1', 'row 1: there is no column "name"'],
    ['name,name\nSoot,Soot', 'row 1: the column "name" is there twice'],
    ['name,__proto__\nSoot,1', 'row 1: there is no column "__proto__"'],
    ['name,hex\n', 'the list holds no inks'],
    [
      'name,hex\nSoot,#20201e\nPale,white',
      'row 3, column hex: "white" does not fit; write the colour as #rrggbb',
    ],
    ['name,L,a,b\nSoot,20,x,1', 'row 2, column a: "x" does not fit; write -200 to 200'],
    ['name,L,a,b\nSoot,20,1,300', 'row 2, column b: "300" does not fit'],
    ['name,L,a,b\nSoot,20,,1', 'row 2: of L, a and b some are missing'],
    ['name,hex,opacity\nSoot,#20201e,85', 'row 2, column opacity: "85" does not fit; write a share from 0'],
    ['name,hex,opacity\nSoot,#20201e,"0,85"', 'row 2, column opacity: "0,85" does not fit'],
    ['name,L,a,b,hex\nSoot,20,1,1,#20201e', 'row 2: give the colour once'],
    ['name,hex,gain,toneGainPercent\nSoot,#20201e,0.1,15', 'row 2: say once how the tints grow'],
    [
      'name,hex,curvePercent\nSoot,#20201e,50-60',
      'row 2, column curvePercent: "50-60" does not fit; write film:print',
    ],
    ['name,hex,curvePercent\nSoot,#20201e,50:60 40:70', 'row 2, column curvePercent'],
    ['id,name,hex\n../x,Soot,#20201e', 'row 2, column id: "../x" does not fit'],
    ['id,name,hex\nconstructor,Soot,#20201e', 'row 2, column id: "constructor" does not fit'],
    ['name,hex\nSoot,#20201e,black, warm', 'row 2 has 4 fields, the header 2; put quotes around text'],
    ['name,hex\n"Soot,#20201e', 'row 2: a quote is opened and not closed'],
    ['name,hex\nSoot,#20201e\nsoot,#202020', 'two inks are called "soot"; give one another id'],
  ])('is refused where it says %j', (text, message) => {
    expect(() => parseShelf(text, CSV)).toThrow(message);
  });
});

describe('any shelf', () => {
  const text = (most: number) =>
    fc
      .string({ minLength: 1, maxLength: most })
      .map((some) => some.trim())
      .filter((some) => some !== '');
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
  const growth = fc.oneof(
    fc.constant({}),
    fc.record({ gain: number(0, 0.5) }),
    fc.record({ toneGainPercent: number(-20, 45) }),
    fc.record({
      curvePercent: fc.constant<[number, number][]>([
        [10, 14.5],
        [50, 68],
      ]),
    }),
  );
  const ink = fc
    .tuple(
      text(80),
      fc.oneof(
        fc.record({ lab: fc.tuple(number(0, 150), number(-200, 200), number(-200, 200)) }),
        fc.constant({ hex: '#a06030' }),
      ),
      number(0, 1),
      growth,
      fc.option(text(60), { nil: undefined }),
    )
    .map(([name, colour, opacity, grows, note]) => ({
      name,
      ...colour,
      opacity,
      ...grows,
      ...(note ? { note } : {}),
    }));
  const shelf: fc.Arbitrary<Shelf> = fc
    .array(ink, { minLength: 1, maxLength: 6 })
    .map((inks) => shelfSchema.parse({ inks: inks.map((each, i) => ({ ...each, id: `ink-${i}` })) }));

  it('comes back from CSV and from JSON as it went', () => {
    fc.assert(
      fc.property(shelf, (some) => {
        expect(parseShelf(shelfCsv(some), CSV)).toEqual(some);
        expect(parseShelf(shelfJson(some), 'a.json')).toEqual(some);
      }),
    );
  });
});
