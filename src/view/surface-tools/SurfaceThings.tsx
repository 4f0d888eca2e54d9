import { useMemo } from 'react';
import { areaAtHand, areaSettings } from '../../store/areas.ts';
import { useJobState, useView } from '../../store/hooks.ts';
import { type Camera, type Point, toDesk } from '../camera.ts';
import { useDesk } from '../desk-store.ts';
import { HatchedRegions } from '../region-tools/HatchedRegions.tsx';
import styles from './SurfaceThings.module.css';
import { useSurface } from './surface-store.ts';
import { useSurfaceSet } from './surface-tools.ts';
import { thingPath } from './thing-paths.ts';
import { type SurfaceSet, type Thing, useThings } from './things.ts';

const HANDLE_PX = 7;

/** Where a fade begins, a ring, and where it ends, a full one. */
function Handles({ thing, camera }: { thing: Thing; camera: Camera }) {
  const [first, last] = [thing.path[0]!, thing.path.at(-1)!].map((mm: Point) => toDesk(camera, mm));
  return (
    <>
      <circle className={styles.handle} cx={first!.x} cy={first!.y} r={HANDLE_PX} />
      <circle className={styles.handleEnd} cx={last!.x} cy={last!.y} r={HANDLE_PX} />
    </>
  );
}

/** How broad a chosen stroke or line near lies. */
function Breadth({ thing }: { thing: Thing }) {
  if (thing.widthMm === 0) return null;
  return <path className={styles.breadth} d={thingPath(thing)} strokeWidth={thing.widthMm} />;
}

function Things({ set }: { set: SurfaceSet }) {
  const things = useThings(set);
  const chosen = useSurface((state) => state.chosen);
  const camera = useDesk((state) => state.camera);
  const all = useMemo(() => things.map(thingPath).join(''), [things]);
  const told = things.find(({ key }) => key === chosen);
  if (things.length === 0) return null;
  const { x, y, pxPerMm } = camera;
  return (
    <svg className={styles.layer} aria-hidden="true" data-things={set}>
      <g transform={`translate(${x} ${y}) scale(${pxPerMm})`}>
        <path className={styles.rim} d={all} />
        <path className={set === 'marks' ? styles.fine : styles.line} d={all} />
        {set === 'areas' && things.map((each) => <Breadth key={each.key} thing={each} />)}
        {told && (
          <>
            {set === 'marks' && <Breadth thing={told} />}
            <path className={styles.toldRim} d={thingPath(told)} />
            <path className={styles.told} d={thingPath(told)} />
          </>
        )}
      </g>
      {set === 'fades' && things.map((each) => <Handles key={each.key} thing={each} camera={camera} />)}
    </svg>
  );
}

const NONE: readonly string[] = [];

/** The whole regions of the area at hand. */
function AreaRegions() {
  const node = useView((state) => state.node);
  const regions = useJobState(({ job }) => {
    const area = job && areaAtHand(job, node);
    return area ? areaSettings(area).regions : NONE;
  });
  return <HatchedRegions ids={regions} hatch="area-hatch" />;
}

/** The shapes, strokes or fades that are worked at, over the print. */
export function SurfaceThings() {
  const set = useSurfaceSet();
  if (!set) return null;
  return (
    <>
      {set === 'areas' && <AreaRegions />}
      <Things set={set} />
    </>
  );
}
