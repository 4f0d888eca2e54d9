import { useEffect, useMemo, useState } from 'react';
import type { RegionMap } from '../../../workers/client.ts';
import { useResults } from '../../store/hooks.ts';
import { useDesk } from '../desk-store.ts';
import { outlineOf } from '../outline.ts';
import styles from './RegionMarks.module.css';

/** So long outlines are traced before the page has its turn, ms. */
const SHARE_MS = 6;
const HATCH_PX = 7;

/** Outlines of regions as one path, mm. Many take several turns of the page; till then those that are there. */
function useOutlines(map: RegionMap | null, ids: readonly string[]): string {
  const [outlines, setOutlines] = useState('');
  const labels = useMemo(() => {
    if (!map || ids.length === 0) return [];
    const chosen = new Set(ids);
    return map.regions.flatMap(({ id }, i) => (chosen.has(id) ? [i + 1] : []));
  }, [map, ids]);
  useEffect(() => {
    const parts: string[] = [];
    let timer: ReturnType<typeof setTimeout> | undefined;
    const trace = () => {
      const until = performance.now() + SHARE_MS;
      while (map && parts.length < labels.length && performance.now() < until)
        parts.push(outlineOf(map, labels[parts.length]!));
      if (parts.length < labels.length) timer = setTimeout(trace);
      else setOutlines(parts.join(''));
    };
    trace();
    return () => clearTimeout(timer);
  }, [map, labels]);
  return outlines;
}

/** Some regions, outlined and hatched, whatever they print. @param hatch id of their hatching, one on the page */
export function HatchedRegions({ ids, hatch }: { ids: readonly string[]; hatch: string }) {
  const map = useResults((state) => state.regions);
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const outlines = useOutlines(map, ids);
  if (outlines === '') return null;
  return (
    <svg className={styles.layer} aria-hidden="true">
      <pattern
        id={hatch}
        width={HATCH_PX}
        height={HATCH_PX}
        patternUnits="userSpaceOnUse"
        patternTransform={`scale(${1 / pxPerMm}) rotate(45)`}
      >
        <rect className={styles.hatchGround} width="3" height={HATCH_PX} />
        <rect className={styles.hatch} width="1.2" height={HATCH_PX} />
      </pattern>
      <g transform={`translate(${x} ${y}) scale(${pxPerMm})`}>
        <path className={styles.hatched} d={outlines} style={{ fill: `url(#${hatch})` }} />
        <path className={styles.outlineRim} d={outlines} />
        <path className={styles.outline} d={outlines} />
      </g>
    </svg>
  );
}
