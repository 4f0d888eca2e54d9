import { useMemo } from 'react';
import { useResults, useView } from '../store/hooks.ts';
import { toDesk } from './camera.ts';
import { useDesk } from './desk-store.ts';
import { outlineOf } from './outline.ts';
import styles from './RegionMark.module.css';

/** The outline of the region under the pointer, and where the keyboard stands. */
export function RegionMark() {
  const map = useResults((state) => state.regions);
  const hovered = useView((state) => state.hovered);
  const camera = useDesk((state) => state.camera);
  const atCursor = useDesk((state) => state.cursor !== null && state.cursor === hovered);
  const label = useMemo(() => (map?.regions.findIndex(({ id }) => id === hovered) ?? -1) + 1, [map, hovered]);
  if (!map || label === 0) return null;
  const [x, y] = map.regions[label - 1]!.anchorMm;
  const anchor = toDesk(camera, { x, y });
  const outline = outlineOf(map, label);
  return (
    <svg className={styles.mark} aria-hidden="true">
      <g transform={`translate(${camera.x} ${camera.y}) scale(${camera.pxPerMm})`}>
        <path className={styles.rim} d={outline} />
        <path className={styles.line} d={outline} />
      </g>
      {atCursor && (
        <g transform={`translate(${anchor.x} ${anchor.y})`}>
          <circle className={styles.cursorRim} r="9" />
          <circle className={styles.cursor} r="9" />
          <circle className={styles.dot} r="2.5" />
        </g>
      )}
    </svg>
  );
}
