import { describe, expect, it } from 'vitest';
import { pressSheet } from '../../../src/nodes/press-sheet.ts';
import { sheetMarks } from '../../../src/press/marks.ts';
import { type SheetSettings, sheetPlan } from '../../../src/press/sheet.ts';
import { sheetPixels } from '../../../src/press/sheet-pixels.ts';

const sheet = (settings: Partial<SheetSettings> = {}): SheetSettings => pressSheet.settings.parse(settings);
const labels = (count: number) => ({ title: 'Beans', names: Array<string>(count).fill('WATER BUTT') });
const BARE = { cropMarks: false, registerMarks: false, plateNames: false, colourBar: false };

describe('a sheet that fits', () => {
  it('is the trim alone where there is no bleed and no mark', () => {
    const { mm, trim, bleed, troubles } = sheetPlan(sheet(BARE), [100, 150], 'trim', labels(3));
    expect({ mm, trim, bleed, troubles }).toEqual({
      mm: [100, 150],
      trim: [0, 0, 100, 150],
      bleed: [0, 0, 100, 150],
      troubles: [],
    });
  });

  it('grows by the bleed of art that ends at the trim', () => {
    const plan = sheetPlan(sheet({ ...BARE, bleedMm: 3 }), [100, 150], 'trim', labels(3));
    expect(plan.mm).toEqual([106, 156]);
    expect(plan.trim).toEqual([3, 3, 103, 153]);
  });

  it('keeps its size where the art has the bleed already, and cuts inside it', () => {
    const plan = sheetPlan(sheet({ ...BARE, bleedMm: 3 }), [100, 150], 'bleed', labels(3));
    expect(plan.mm).toEqual([100, 150]);
    expect(plan.trim).toEqual([3, 3, 97, 147]);
  });

  it('holds every mark', () => {
    const settings = sheet({ bleedMm: 3, tintWedge: true });
    const plan = sheetPlan(settings, [60, 40], 'trim', labels(5));
    const without = sheetMarks({ ...settings, size: 'own' }, { ...plan, mm: [1000, 1000] }, labels(5));
    expect(sheetMarks(settings, plan, labels(5))).toHaveLength(without.length);
    expect(plan.troubles).toEqual([]);
  });
});

describe('a sheet of a size', () => {
  it('lies the way that holds the picture', () => {
    expect(sheetPlan(sheet({ ...BARE, size: 'a4' }), [250, 100], 'trim', labels(1)).mm).toEqual([297, 210]);
    expect(sheetPlan(sheet({ ...BARE, size: 'a4' }), [100, 250], 'trim', labels(1)).mm).toEqual([210, 297]);
  });

  it('has the picture in its middle, shifted to the right on the front and to the left on the back', () => {
    const left = (side: 'front' | 'back') =>
      sheetPlan(
        sheet({ ...BARE, size: 'a4', shift: { rightMm: 5, downMm: 2 }, side }),
        [100, 200],
        'trim',
        labels(1),
      ).trim;
    expect(left('front')).toEqual([60, 50.5, 160, 250.5]);
    expect(left('back')).toEqual([50, 50.5, 150, 250.5]);
  });

  it('that is too small is told with the size that is needed', () => {
    const { troubles } = sheetPlan(sheet({ ...BARE, size: 'a5', bleedMm: 3 }), [148, 210], 'trim', labels(1));
    expect(troubles).toEqual([expect.stringMatching(/148\.0 x 210\.0 mm.*154\.0 x 216\.0 mm/)]);
  });

  it('without room for the marks is told, and the marks that fall off are left out', () => {
    const settings = sheet({ size: 'own', own: { widthMm: 104, heightMm: 154 } });
    const plan = sheetPlan(settings, [100, 150], 'trim', labels(1));
    expect(plan.troubles).toEqual([expect.stringContaining('marks do not fit')]);
    const marks = sheetMarks(settings, plan, labels(1));
    for (const mark of marks) {
      const points = mark.shape === 'line' ? mark.path : [mark.box.slice(0, 2), mark.box.slice(2)];
      for (const [x, y] of points) {
        expect(x! >= 0 && x! <= 104).toBe(true);
        expect(y! >= 0 && y! <= 154).toBe(true);
      }
    }
  });

  it('says when the bleed is larger than the drawing', () => {
    expect(sheetPlan(sheet({ bleedMm: 20 }), [30, 80], 'bleed', labels(1)).troubles[0]).toMatch(
      /bleed is larger/,
    );
  });
});

describe('marks', () => {
  const settings = sheet({ bleedMm: 3 });
  const plan = sheetPlan(settings, [100, 150], 'trim', labels(2));
  const marks = sheetMarks(settings, plan, labels(2));

  it('cut: eight lines of 5 mm that begin beyond the bleed', () => {
    const [left, top] = plan.trim;
    const crop = marks
      .flatMap((mark) => (mark.shape === 'line' && mark.path.length === 2 ? [mark] : []))
      .slice(0, 8);
    const lengths = crop.map((mark) => {
      const [[ax, ay], [bx, by]] = mark.path as [[number, number], [number, number]];
      return Math.abs(bx - ax) + Math.abs(by - ay);
    });
    for (const length of lengths) expect(length).toBeCloseTo(5, 9);
    expect(crop[0]!.path).toEqual([
      [left - 3, top],
      [left - 8, top],
    ]);
  });

  it('of one plate are its name and its patches; all others are on every plate', () => {
    const patches = marks.filter((mark) => mark.shape === 'box');
    expect(patches.map(({ plate, tintPercent }) => [plate, tintPercent])).toEqual([
      [0, 100],
      [0, 50],
      [1, 100],
      [1, 50],
    ]);
    const lines = marks.filter((mark) => mark.shape === 'line');
    expect(new Set(lines.map(({ plate }) => plate))).toEqual(new Set([null, 0, 1]));
  });
});

describe('a sheet in pixels', () => {
  const plates = { width: 999, height: 1501, ppi: 600, artAt: 'trim', labels: labels(3) } as const;

  it('has a trim of exactly the pixels of the plates', () => {
    const { trim, art } = sheetPixels(sheet({ size: 'a4', bleedMm: 3 }), plates);
    expect([trim[2] - trim[0], trim[3] - trim[1]]).toEqual([999, 1501]);
    expect(art).toEqual([trim[0], trim[1]]);
  });

  it('has marks that meet those pixels', () => {
    const { trim, plan, ppi } = sheetPixels(sheet({ size: 'a4', bleedMm: 3 }), plates);
    plan.trim.forEach((mm, i) => {
      expect((mm * ppi) / 25.4).toBeCloseTo(trim[i]!, 9);
    });
  });

  it('cuts art at bleed size down by whole pixels', () => {
    const { trim, bleed, width } = sheetPixels(sheet({ ...BARE, bleedMm: 3 }), { ...plates, artAt: 'bleed' });
    expect(bleed).toEqual([0, 0, 999, 1501]);
    expect(trim).toEqual([71, 71, 928, 1430]);
    expect(width).toBe(999);
  });
});
