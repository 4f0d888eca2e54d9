import { EdgeLabelRenderer, type EdgeProps } from '@xyflow/react';
import { memo } from 'react';
import { useStore } from 'zustand';
import { screenColour } from '../docket/InkChip.tsx';
import { usePlates } from '../docket/use-plates.ts';
import { titleOf } from './actions.ts';
import styles from './Flow.module.css';
import type { StrandEdge } from './flow-parts.ts';
import { sameWire } from './graph-edits.ts';
import { lastMiddle, strandPath } from './strand-path.ts';
import { strings } from './strings.ts';
import { setWiring, wiringStore } from './wiring-store.ts';

/** From the middle of one strand to the next, px. */
const APART = 4;

/** A wire: parallel strands in the ink colours for plates, one thin grey strand for anything else. */
export const Strand = memo(function Strand({ data }: EdgeProps<StrandEdge>) {
  const plates = usePlates(data?.wire.from.node ?? '');
  const chosen = useStore(wiringStore, ({ wire }) => wire !== null && !!data && sameWire(wire, data.wire));
  if (!data) return null;
  const { way, wire } = data;
  const colours = data.plates && plates.length > 0 ? plates.map(({ ink }) => screenColour(ink)) : [null];
  const label = strings.wire(wire.from.port, titleOf(wire.from.node), titleOf(wire.to.node));
  const middle = lastMiddle(way);
  const choose = () => setWiring({ wire: chosen ? null : wire, list: null, from: null });
  return (
    <>
      {chosen && (
        <path className={styles.halo} d={strandPath(way, 0)} strokeWidth={colours.length * APART + 10} />
      )}
      {colours.map((colour, i) => (
        <path
          key={plates[i]?.id ?? 'grey'}
          className={styles.strand}
          d={strandPath(way, (i - (colours.length - 1) / 2) * APART)}
          style={colour ? { stroke: colour, strokeWidth: 2.5 } : undefined}
        />
      ))}
      <EdgeLabelRenderer>
        <button
          type="button"
          className={styles.wire}
          aria-label={label}
          aria-pressed={chosen}
          title={label}
          style={{ transform: `translate(-50%, -50%) translate(${middle.x}px, ${middle.y}px)` }}
          onClick={choose}
        >
          <span className={styles.plus} aria-hidden="true">
            +
          </span>
        </button>
      </EdgeLabelRenderer>
    </>
  );
});
