import { useRef } from 'react';
import { useView } from '../store/hooks.ts';
import { PRINT_ID, useDesk } from './desk-store.ts';
import { GhostLines } from './GhostLines.tsx';
import { pressKey } from './keyboard.ts';
import { PrintTiles } from './PrintTiles.tsx';
import styles from './PrintView.module.css';
import { Readout } from './Readout.tsx';
import { RegionMark } from './RegionMark.tsx';
import { Rulers } from './Rulers.tsx';
import { ChosenRegions } from './region-tools/ChosenRegions.tsx';
import { HandAt } from './region-tools/HandAt.tsx';
import { RegionMarks } from './region-tools/RegionMarks.tsx';
import { RegionToolRow } from './region-tools/RegionToolRow.tsx';
import { SlackMarks } from './SlackMarks.tsx';
import { useSaid } from './said-store.ts';
import { strings } from './strings.ts';
import { DraftStroke } from './surface-tools/DraftStroke.tsx';
import { SurfaceRow } from './surface-tools/SurfaceRow.tsx';
import { SurfaceThings } from './surface-tools/SurfaceThings.tsx';
import { useSurfaceSet } from './surface-tools/surface-tools.ts';
import { ToolSwitch } from './ToolSwitch.tsx';
import { useCloseUp } from './use-close-up.ts';
import { useHand } from './use-hand.ts';
import { useSheet } from './use-sheet.ts';
import { useWheel } from './use-wheel.ts';
import { ZoomControls } from './ZoomControls.tsx';

/** The sheet's paper and its shadow on the desk. */
function Sheet() {
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const sheet = useDesk((state) => state.sheet);
  if (!sheet) return null;
  const size = { width: sheet.width * pxPerMm, height: sheet.height * pxPerMm };
  return <div className={styles.sheet} style={{ ...size, transform: `translate(${x}px, ${y}px)` }} />;
}

function Said() {
  return (
    <p className={styles.said} aria-live="polite">
      {useSaid()}
    </p>
  );
}

/** Of the tools for what lies over the regions, those that act on the region under the hand; all fades do. */
const ACTS_ON_REGIONS: ReadonlySet<string> = new Set(['area-regions']);

/** The print takes the focus: role application has its own keys. */
const FOCUSABLE = { tabIndex: 0 };

/** The print on the desk, with rulers, what lies under the pointer, and the tools to tint it. */
export function PrintView() {
  const surface = useRef<HTMLDivElement>(null);
  const tints = useView((state) => state.inHand !== null);
  const tool = useView((state) => state.tool);
  const over = useSurfaceSet();
  useSheet(surface);
  useCloseUp();
  useWheel(surface);
  const hand = useHand(surface);
  return (
    <div className={styles.view}>
      <Rulers />
      <div
        ref={surface}
        id={PRINT_ID}
        className={`${styles.desk} ${tints ? styles.tints : styles.moves}`}
        data-tool={tool}
        role="application"
        aria-label={strings.print}
        aria-describedby="print-keys"
        onKeyDown={pressKey}
        onContextMenu={(event) => event.preventDefault()}
        {...FOCUSABLE}
        {...hand}
      >
        <Sheet />
        <PrintTiles />
        <GhostLines />
        <SlackMarks />
        <ChosenRegions />
        {(!over || ACTS_ON_REGIONS.has(tool) || over === 'fades') && <RegionMark />}
        <RegionMarks />
        <SurfaceThings />
        <DraftStroke />
        <HandAt />
      </div>
      {over ? <SurfaceRow key={over} set={over} /> : <RegionToolRow />}
      <div className={styles.foot}>
        <ToolSwitch />
        <Readout />
        <ZoomControls />
      </div>
      <p id="print-keys" className={styles.said}>
        {strings.keys}
      </p>
      <Said />
    </div>
  );
}
