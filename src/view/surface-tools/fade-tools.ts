import type { Tool } from '../../app/registry.ts';
import type { Fade, Recipe } from '../../graph/recipe.ts';
import { recipeOf } from '../../store/edits.ts';
import { fadesOf, withFade } from '../../store/fades.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { viewStore } from '../../store/view-store.ts';
import { type Point, toMm } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import { reachMm, type Spot, type Stroke, spotOn } from '../hand.ts';
import { platesOf, recipeText } from '../plates-of.ts';
import { placeMm } from '../region-tools/make-edit.ts';
import { simplify } from '../region-tools/simplify.ts';
import { dropUnfinished, keepUnfinished, unfinishedOf } from '../region-tools/unfinished-store.ts';
import { say } from '../said-store.ts';
import { dragEnd, pressOnChosen } from './choose-thing.ts';
import { surfaceTexts } from './strings.ts';
import { surfaceStore } from './surface-store.ts';

const { fades: texts, tools } = surfaceTexts;
/** How far a drawn path may be straightened, px on screen. */
const STRAIGHTENED_PX = 1;
/** A shorter drag makes no fade, mm. */
const LEAST_MM = 0.2;

/** What a new fade on a region runs between: what it prints, or its fade begins with, and what is in hand. */
export function endsFor(region: string): Pick<Fade, 'from' | 'to'> | null {
  const { job } = jobStore.getState();
  if (!job) return null;
  const there = fadesOf(job)[region];
  const { inHand } = viewStore.getState();
  const to: Recipe = inHand ?? there?.to ?? {};
  return { from: there?.from ?? recipeOf(job, region), to };
}

function make(shape: Fade['shape'], points: readonly Point[]): void {
  const [first, last] = [points[0]!, points.at(-1)!];
  const { region } = spotOn(first);
  if (region === null) {
    say(texts.noRegion);
    return;
  }
  const long = points
    .slice(1)
    .reduce((sum, { x, y }, i) => sum + Math.hypot(x - points[i]!.x, y - points[i]!.y), 0);
  const ends = endsFor(region);
  if (!ends || long < LEAST_MM) return;
  const { pxPerMm } = deskStore.getState().camera;
  const path = shape === 'path' ? simplify(points, STRAIGHTENED_PX / pxPerMm) : [first, last];
  edit(texts.steps.make, (job) => withFade(job, region, { shape, ...ends, pathMm: path.map(placeMm) }));
  surfaceStore.setState({ chosen: region });
  const { job } = jobStore.getState();
  const words = (recipe: Recipe) => recipeText(recipe, platesOf(job!));
  say(texts.said(words(ends.from), words(ends.to)));
}

/** A tool that fades the region in which its drag begins; both ends can be clicked as well. */
function fadeTool(shape: Fade['shape'], key: string, notes: Pick<Tool, 'title' | 'help'>): Tool {
  const id = `fade-${shape}`;
  const outline = shape === 'radial' ? { outline: 'circle' as const } : {};
  const finish = (points: readonly Point[]) => make(shape, points);
  const onSheet = (at: Point) => toMm(deskStore.getState().camera, at);

  const tap = ({ mm, region }: Spot) => {
    const points = unfinishedOf(id)?.points ?? [];
    const last = points.at(-1);
    const ends = last && (shape !== 'path' || Math.hypot(last.x - mm.x, last.y - mm.y) <= reachMm(10));
    if (ends) {
      dropUnfinished();
      finish(shape === 'path' ? points : [...points, mm]);
    } else if (!last && region === null) say(texts.noRegion);
    else
      keepUnfinished({
        tool: id,
        points: [...points, mm],
        finish: shape === 'path' ? finish : null,
        ...outline,
      });
  };

  const stroke = (at: Point): Stroke => {
    const held = dragEnd('fades', at);
    if (held) return held;
    const points = [onSheet(at)];
    const show = () =>
      keepUnfinished({
        tool: id,
        points: shape === 'path' ? points : points.slice(0, 1),
        finish: null,
        ...outline,
      });
    show();
    return {
      to: (_, to) => {
        points.push(onSheet(to));
        show();
      },
      end: () => {
        if (dropUnfinished()) finish(points);
      },
      drop: dropUnfinished,
    };
  };

  return {
    id,
    ...notes,
    key,
    set: 'fades',
    walks: 'regions',
    tap,
    stroke,
    press: (pressed, far) => pressOnChosen('fades', pressed, far),
  };
}

/** The tools that fade regions. */
export const fadeTools: readonly [Tool, ...Tool[]] = [
  fadeTool('linear', 'f', tools.straight),
  fadeTool('radial', 'd', tools.round),
  fadeTool('path', 's', tools.along),
];
