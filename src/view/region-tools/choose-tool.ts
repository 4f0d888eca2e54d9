import type { Tool } from '../../app/registry.ts';
import { resultsStore } from '../../store/results-store.ts';
import { setView, viewStore } from '../../store/view-store.ts';
import { toMm } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import type { Spot, Stroke } from '../hand.ts';
import { regionsAlong } from '../pick.ts';
import { say } from '../said-store.ts';
import { regionTexts as texts } from './strings.ts';

/** Chooses these regions and no others. */
export function choose(regions: readonly string[]): void {
  const chosen = [...new Set(regions)];
  setView({ chosen });
  say(chosen.length > 0 ? texts.said.chosen(chosen.length) : texts.said.none);
}

/** Chooses a region, or lets it go. */
function toggle({ region }: Spot): void {
  const { chosen } = viewStore.getState();
  if (region === null) say(texts.said.noRegion);
  else if (chosen.includes(region)) choose(chosen.filter((id) => id !== region));
  else choose([...chosen, region]);
}

/** A sweep chooses what it crosses. */
function sweep(): Stroke {
  return {
    to(from, to) {
      const { regions } = resultsStore.getState();
      const { camera } = deskStore.getState();
      if (!regions) return;
      const { chosen } = viewStore.getState();
      const crossed = regionsAlong(regions, toMm(camera, from), toMm(camera, to));
      const all = new Set([...chosen, ...crossed]);
      if (all.size > chosen.length) setView({ chosen: [...all] });
    },
    end: () => choose(viewStore.getState().chosen),
    drop: () => {},
  };
}

/** Chooses every region that lies in the same one around it as the last chosen or pointed at; all others stay. */
export function chooseAllBeside(): void {
  const map = resultsStore.getState().regions;
  const { chosen, hovered } = viewStore.getState();
  const last = chosen.at(-1) ?? hovered;
  const around = map?.regions.find(({ id }) => id === last);
  if (!map || !around) {
    say(texts.said.chooseFirst);
    return;
  }
  const beside = map.regions.filter(({ inside }) => inside === around.inside).map(({ id }) => id);
  choose([...chosen, ...beside]);
}

/** Chooses regions, to put them in a group or tint them together. */
export const chooseTool: Tool = {
  id: 'choose',
  ...texts.tools.choose,
  key: 'c',
  set: 'regions',
  walks: 'regions',
  tap: toggle,
  stroke: sweep,
};
