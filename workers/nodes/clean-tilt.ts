import type { SettingsOf } from '../../src/graph/node-kind.ts';
import type { cleanLine } from '../../src/nodes/clean-line.ts';
import type { Tools } from '../engine/evaluation.ts';
import { otsu } from '../kernels/otsu.ts';
import type { Plane } from '../kernels/plane.ts';
import { turnedPlace } from '../kernels/turn.ts';

type Settings = Pick<SettingsOf<typeof cleanLine>, 'straighten' | 'turnDeg'>;

/** Edges heap up by this much where straight lines agree on a direction: 1.04 in the demo's leaves, 4 in a frame. */
const CLEAR = 1.5;
/** The tilt is looked for up to here; at the end of the range it is none. */
const MOST_DEG = 7;
/** Less is not worth a loss of sharpness. */
const LEAST_DEG = 0.02;

/** Turns the drawing about its middle: by what is set, or until its straight lines stand level and upright. */
export async function straightened(
  line: Plane,
  settings: Settings,
  tools: Tools,
): Promise<{ line: Plane; turnedDeg: number }> {
  const turnedDeg = await turnFor(line, settings, tools);
  if (turnedDeg === 0) return { line, turnedDeg };
  const out = tools.plane(line.width, line.height);
  const place = turnedPlace(turnedDeg, line.width, line.height);
  await tools.bands('offset', { plate: line, out, place }, line.height);
  return { line: out, turnedDeg };
}

async function turnFor(line: Plane, settings: Settings, tools: Tools): Promise<number> {
  if (settings.straighten === 'off') return 0;
  if (settings.straighten === 'set') return settings.turnDeg;
  const counts = await tools.whole('histogram', { data: line.data });
  const { deg, clarity } = await tools.whole('findTilt', { line, level: otsu(counts) });
  if (clarity < CLEAR || Math.abs(deg) >= MOST_DEG) {
    tools.complain({
      code: 'not-straightened',
      severity: 'note',
      message:
        'Clean line did not turn the drawing: its lines agree on no direction. Set the turn by hand if it stands askew.',
    });
    return 0;
  }
  if (Math.abs(deg) < LEAST_DEG) return 0;
  const way = deg > 0 ? 'anticlockwise' : 'clockwise';
  tools.complain({
    code: 'straightened',
    severity: 'note',
    message: `Clean line turned the drawing ${Math.abs(deg)} degrees ${way}, so that its straight lines stand level.`,
    measure: -deg,
  });
  return -deg;
}
