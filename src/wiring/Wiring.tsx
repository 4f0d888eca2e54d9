import { useMemo } from 'react';
import { createPortal } from 'react-dom';
import { useJob, useView } from '../store/hooks.ts';
import { setView } from '../store/view-store.ts';
import { flowOrder } from './layers.ts';
import { shapeOf } from './shape.ts';
import { strings } from './strings.ts';
import { TicketList } from './TicketList.tsx';
import styles from './Wiring.module.css';
import { WiringSheet } from './WiringSheet.tsx';

/** The graph: a strip of tickets, or unfolded as a sheet over the print. */
export function Wiring() {
  const open = useView((state) => state.wiringOpen);
  const graph = useJob((job) => shapeOf(job.graph));
  const order = useMemo(() => flowOrder(graph), [graph]);
  return (
    <div className={styles.wiring}>
      <header className={styles.head}>
        <h2>{strings.heading}</h2>
        <button
          type="button"
          className={styles.word}
          aria-expanded={open}
          aria-label={open ? strings.foldLabel : strings.unfoldLabel}
          onClick={() => setView({ wiringOpen: !open })}
        >
          {open ? strings.fold : strings.unfold}
        </button>
      </header>
      {!open && <TicketList ids={order} />}
      {open && createPortal(<WiringSheet />, document.querySelector('main') ?? document.body)}
    </div>
  );
}
