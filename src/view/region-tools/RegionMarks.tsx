import { useMemo } from 'react';
import { useDesk } from '../desk-store.ts';
import { inSight, type Shape, shapeOf, speckOf, together } from './mark-shapes.ts';
import type { Mark } from './marks.ts';
import styles from './RegionMarks.module.css';
import { useRegionsShow } from './region-tools.ts';
import { bySize, type Lying, seenMarks } from './seen-marks.ts';
import { useMarks } from './shown-marks.ts';

function Strokes({ shape: { line, dashes, solid }, told }: { shape: Shape; told?: boolean }) {
  return (
    <g className={told ? styles.told : styles.mark}>
      <path className={styles.rim} d={line + dashes + solid} />
      <path className={styles.line} d={line} />
      <path className={styles.dashes} d={dashes} />
      <path className={styles.solid} d={solid} />
    </g>
  );
}

/** What is drawn of some marks, as far as the view has them. */
function drawn(marks: readonly Mark[], lying: Lying): { shape: Shape; specks: string } {
  const { camera, desk } = lying;
  const seen = seenMarks(marks, lying).filter((mark) => inSight(mark, camera, desk));
  const { full, specks } = bySize(seen, lying);
  return {
    shape: together(full.map((mark) => shapeOf(mark, camera))),
    specks: specks.map((mark) => speckOf(mark, camera)).join(''),
  };
}

const NONE: readonly Mark[] = [];

/** Walls, open gaps and hand edits over the print; the one that is pointed at stands out. */
export function RegionMarks() {
  const all = useMarks();
  const shows = useRegionsShow();
  const camera = useDesk((state) => state.camera);
  const desk = useDesk((state) => state.desk);
  const sheet = useDesk((state) => state.sheet);
  const toldKey = useDesk((state) => state.mark);
  const marks = shows ? all : NONE;
  const { shape, specks } = useMemo(
    () => drawn(marks, { camera, desk, sheet }),
    [marks, camera, desk, sheet],
  );
  const told = toldKey === null ? undefined : all.find(({ key }) => key === toldKey);
  if (marks.length === 0 && !told) return null;
  return (
    <svg className={styles.layer} aria-hidden="true">
      <path className={styles.speckRim} d={specks} />
      <path className={styles.speck} d={specks} />
      <Strokes shape={shape} />
      {told && <Strokes shape={shapeOf(told, camera)} told />}
    </svg>
  );
}
