/** Letters of single strokes on a cell 4 wide and 6 high: runs of points `xy`, the runs apart by spaces. */
const STROKES: Readonly<Record<string, string>> = {
  A: '062046 1434',
  B: '0006 003041423303 3344453606',
  C: '41301001051636 3645',
  D: '00304145360600',
  E: '40000646 0333',
  F: '400006 0333',
  G: '4130100105163645432333',
  H: '0006 4046 0343',
  I: '1030 2026 1636',
  J: '40453616050504',
  K: '0006 4004 2346',
  L: '000646',
  M: '0600234046',
  N: '06004640',
  O: '103041453616050110',
  P: '06003041423303',
  Q: '103041453616050110 2446',
  R: '06003041423303 2346',
  S: '413010010213334445361605',
  T: '0040 2026',
  U: '000516364540',
  V: '002640',
  W: '0016243640',
  X: '0046 4006',
  Y: '002340 2326',
  Z: '00400646',
  0: '103041453616050110 0541',
  1: '112026 1636',
  2: '011030414233060646',
  3: '003041423313 3344453606',
  4: '300444 3036',
  5: '400002324345361605',
  6: '30100105163645442303',
  7: '004016',
  8: '103041423313020110 133344453616050413',
  9: '423313020110304145361605',
  '%': '4006 0010110100 3545463635',
  '.': '2526',
  ',': '2516',
  '/': '4006',
  '+': '2125 0343',
  '-': '0343',
  ':': '2122 2526',
};

export const CELL = { width: 4, height: 6, advance: 5.6 } as const;

type Run = readonly (readonly [number, number])[];

/** The strokes of a letter in its cell; none for a letter without strokes. */
export function strokesOf(letter: string): Run[] {
  const text = STROKES[letter.toUpperCase()];
  if (text === undefined) return [];
  return text.split(' ').map((run) => {
    const pairs = run.match(/\d\d/g) ?? [];
    return pairs.map((pair) => [Number(pair[0]), Number(pair[1])] as const);
  });
}

/**
 * A text in outlines of one stroke, as the data of an SVG path. Letters that have no strokes leave a space.
 *
 * @param height of capitals, mm
 * @param at upper left corner, mm
 */
export function textPath(text: string, height: number, [x, y]: readonly [number, number]): string {
  const unit = height / CELL.height;
  const runs = [...text].flatMap((letter, i) =>
    strokesOf(letter).map((run) =>
      run
        .map(([column, row], k) => {
          const px = (x + (i * CELL.advance + column) * unit).toFixed(3);
          return `${k === 0 ? 'M' : 'L'}${px} ${(y + row * unit).toFixed(3)}`;
        })
        .join(''),
    ),
  );
  return runs.join('');
}

/** How wide a text stands, mm. */
export function textWidth(text: string, height: number): number {
  return text.length === 0
    ? 0
    : (height / CELL.height) * (text.length * CELL.advance - CELL.advance + CELL.width);
}
