import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { SLACK_MARK, type SlackMap } from '../../workers/client.ts';
import { useView } from '../store/hooks.ts';
import { slackStore } from '../store/slack-store.ts';
import { useDesk } from './desk-store.ts';
import styles from './PrintView.module.css';

/** Where plates slip, over the print: thick where paper shows, hatched another overprint, thin where it holds. */
export function SlackMarks() {
  const shows = useView((state) => state.showing.view === 'slack');
  const slack = useStore(slackStore, (state) => state.slack);
  if (!shows || slack === null || typeof slack === 'string') return null;
  return (
    <div aria-hidden="true">
      <Marks map={slack.map} />
    </div>
  );
}

const INK = [35, 33, 30] as const;
/** How far a mark reaches each way, px, and how opaque it is. */
const LOOK: Readonly<Record<number, { reach: number; opacity: number }>> = {
  [SLACK_MARK.holds]: { reach: 0, opacity: 120 },
  [SLACK_MARK.overprint]: { reach: 1, opacity: 200 },
  [SLACK_MARK.paper]: { reach: 2, opacity: 255 },
  [SLACK_MARK.muchPaper]: { reach: 3, opacity: 255 },
};
/** Bars of the hatching, px. */
const HATCH = 3;

function Marks({ map }: { map: SlackMap }) {
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const target = canvas.current!;
    target.width = map.width;
    target.height = map.height;
    target.getContext('2d')!.putImageData(new ImageData(drawn(map), map.width, map.height), 0, 0);
  }, [map]);
  const [width, height] = [map.mm[0] * pxPerMm, map.mm[1] * pxPerMm];
  return (
    <canvas
      ref={canvas}
      className={styles.ghost}
      style={{ width, height, transform: `translate(${x}px, ${y}px)` }}
    />
  );
}

/** The graver marks over the lighter. */
function drawn({ width, height, marks }: SlackMap): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (const kind of [SLACK_MARK.holds, SLACK_MARK.overprint, SLACK_MARK.paper, SLACK_MARK.muchPaper]) {
    const { reach, opacity } = LOOK[kind]!;
    for (let i = marks.indexOf(kind); i >= 0; i = marks.indexOf(kind, i + 1)) {
      const [x, y] = [i % width, Math.floor(i / width)];
      for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++)
        for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) {
          if (kind === SLACK_MARK.overprint && Math.floor((u + v) / HATCH) % 2 === 1) continue;
          rgba.set([...INK, opacity], (v * width + u) * 4);
        }
    }
  }
  return rgba;
}
