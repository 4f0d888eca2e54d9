import { useJobState } from '../../store/hooks.ts';
import { useDesk } from '../desk-store.ts';
import { platesOf } from '../plates-of.ts';
import styles from './SurfaceThings.module.css';
import { strokeOutline } from './stroke-outline.ts';
import { useSurface } from './surface-store.ts';

/** Laid ink is shown as the first plate's, at its tint; what is lifted as paper. */
function usePaint(): { fill: string; fillOpacity: number } {
  const { does, plates, tintPercent } = useSurface((state) => state.brush);
  const ink = useJobState(({ job }) => {
    const all = job ? platesOf(job) : [];
    return (all.find(({ id }) => plates.includes(id)) ?? all.at(-1))?.colour;
  });
  if (does === 'lift' || does === 'lift-to') return { fill: 'var(--card)', fillOpacity: 0.85 };
  return { fill: ink || 'var(--ink)', fillOpacity: Math.max(0.15, tintPercent / 100) };
}

/** The stroke under the hand, as broad as it will print. */
export function DraftStroke() {
  const draft = useSurface((state) => state.draft);
  const widthMm = useSurface((state) => state.brush.widthMm);
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const paint = usePaint();
  if (draft.length === 0) return null;
  return (
    <svg className={styles.layer} aria-hidden="true" data-testid="draft-stroke">
      <g transform={`translate(${x} ${y}) scale(${pxPerMm})`}>
        <path className={styles.draft} d={strokeOutline(draft, widthMm)} style={paint} />
      </g>
    </svg>
  );
}
