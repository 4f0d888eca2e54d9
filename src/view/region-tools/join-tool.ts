import type { Tool } from '../../app/registry.ts';
import type { Point } from '../camera.ts';
import { type Spot, type Stroke, spotAt, spotOn } from '../hand.ts';
import { say } from '../said-store.ts';
import { makeEdit, placeMm } from './make-edit.ts';
import { regionTexts as texts } from './strings.ts';
import { dropUnfinished, keepUnfinished, unfinishedOf } from './unfinished-store.ts';

const ID = 'join';
const { said } = texts;

function begin({ mm, region }: Spot): void {
  if (region === null) {
    say(said.noRegion);
    return;
  }
  keepUnfinished({ tool: ID, points: [mm], finish: null });
  say(said.joinTo);
}

function finish(from: Spot, to: Spot): void {
  if (from.region === null || to.region === null) say(said.noRegion);
  else if (from.region === to.region) say(said.sameRegion);
  else {
    dropUnfinished();
    makeEdit({ does: 'join', fromMm: placeMm(from.mm), toMm: placeMm(to.mm) });
  }
}

function tap(spot: Spot): void {
  const first = unfinishedOf(ID)?.points[0];
  if (first) finish(spotOn(first), spot);
  else begin(spot);
}

function stroke(at: Point): Stroke {
  const from = spotAt(at);
  let end = at;
  keepUnfinished({ tool: ID, points: [from.mm], finish: null });
  return {
    to: (_, to) => {
      end = to;
      if (unfinishedOf(ID)) keepUnfinished({ tool: ID, points: [from.mm, spotAt(to).mm], finish: null });
    },
    end: () => {
      if (dropUnfinished()) finish(from, spotAt(end));
    },
    drop: dropUnfinished,
  };
}

/** Makes one region of two. */
export const join: Tool = {
  id: ID,
  ...texts.tools.join,
  key: 'j',
  set: 'regions',
  walks: 'regions',
  tap,
  stroke,
};
