import { useEffect, useRef } from 'react';
import type { Ghost } from '../../workers/client.ts';
import type { Transform } from '../graph/redraw.ts';
import { useJob, useResults, useView } from '../store/hooks.ts';
import { useDesk } from './desk-store.ts';
import styles from './PrintView.module.css';

/** The lines the drawing had before it was redrawn, where they lie on the new ones. */
export function GhostLines() {
  const wanted = useView((state) => state.ghost);
  const ghost = useResults((state) => state.ghost);
  const transform = useJob((job) => job.redraw?.transform);
  if (!wanted || !ghost || !transform) return null;
  return (
    <div aria-hidden="true">
      <Lines ghost={ghost} transform={transform} />
    </div>
  );
}

function Lines({ ghost, transform }: { ghost: Ghost; transform: Transform }) {
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const sheet = useDesk((state) => state.sheet);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const target = canvas.current!;
    target.width = ghost.width;
    target.height = ghost.height;
    target.getContext('2d')!.putImageData(new ImageData(ghost.pixels, ghost.width, ghost.height), 0, 0);
  }, [ghost]);
  const { scale, turnDeg, shiftMm } = transform;
  const [width, height] = [ghost.mm[0] * pxPerMm, ghost.mm[1] * pxPerMm];
  const left = x + ((sheet?.width ?? 0) / 2 + shiftMm[0]) * pxPerMm - width / 2;
  const top = y + ((sheet?.height ?? 0) / 2 + shiftMm[1]) * pxPerMm - height / 2;
  const place = `translate(${left}px, ${top}px) rotate(${turnDeg}deg) scale(${scale})`;
  return <canvas ref={canvas} className={styles.ghost} style={{ width, height, transform: place }} />;
}
