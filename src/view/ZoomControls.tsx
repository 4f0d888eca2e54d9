import { ACTUAL_PX_PER_MM } from './camera.ts';
import { fitSheet, useDesk, zoomBy, zoomToActual } from './desk-store.ts';
import styles from './FootControls.module.css';
import { strings } from './strings.ts';
import { ZOOM_STEP } from './zoom-shortcuts.ts';

/** Fit, further away, the size on screen, closer, actual size. */
export function ZoomControls() {
  const share = useDesk((state) => state.camera.pxPerMm / ACTUAL_PX_PER_MM);
  const fitted = useDesk((state) => state.fitted);
  const actual = Math.abs(share - 1) < 1e-6;
  return (
    <fieldset className={styles.group} aria-label={strings.zoomLabel}>
      <button type="button" aria-pressed={fitted} aria-label={strings.fitName} onClick={fitSheet}>
        {strings.fit}
      </button>
      <button type="button" aria-pressed={actual} onClick={zoomToActual}>
        {strings.actual}
      </button>
      <button
        type="button"
        className={styles.step}
        aria-label={strings.further}
        onClick={() => zoomBy(1 / ZOOM_STEP)}
      >
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1 6h10" />
        </svg>
      </button>
      <output className={styles.share}>{strings.percent(share)}</output>
      <button
        type="button"
        className={styles.step}
        aria-label={strings.closer}
        onClick={() => zoomBy(ZOOM_STEP)}
      >
        <svg viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1 6h10M6 1v10" />
        </svg>
      </button>
    </fieldset>
  );
}
