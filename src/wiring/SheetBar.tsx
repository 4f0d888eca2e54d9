import type { ReactFlowInstance } from '@xyflow/react';
import { useStore } from 'zustand';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useView } from '../store/hooks.ts';
import { setView } from '../store/view-store.ts';
import { bypass, remove, unwire } from './actions.ts';
import type { StrandEdge, TicketNode } from './flow-parts.ts';
import { canBypass } from './graph-edits.ts';
import styles from './Sheet.module.css';
import { strings } from './strings.ts';
import { setWiring, wiringStore } from './wiring-store.ts';

function WireActions() {
  const wire = useStore(wiringStore, (state) => state.wire);
  const list = useStore(wiringStore, (state) => state.list);
  if (!wire) return null;
  return (
    <>
      <button
        type="button"
        className={styles.word}
        aria-expanded={list === 'insert'}
        onClick={() => setWiring({ list: list === 'insert' ? null : 'insert' })}
      >
        {strings.insert}
      </button>
      <button type="button" className={styles.word} onClick={() => unwire(wire)}>
        {strings.cutWire}
      </button>
    </>
  );
}

function NodeActions() {
  const id = useView((state) => state.node);
  const node = useJob((job) => job.graph.nodes.find((each) => each.id === id));
  const kind = node && nodeKinds.get(node.kind);
  if (!node || !kind) return null;
  return (
    <>
      {canBypass(kind) && (
        <button type="button" className={styles.word} onClick={() => bypass(node.id, !node.bypassed)}>
          {node.bypassed ? strings.inUse(kind.title) : strings.bypass(kind.title)}
        </button>
      )}
      <button type="button" className={styles.word} onClick={() => remove(node.id)}>
        {strings.remove(kind.title)}
      </button>
    </>
  );
}

/** What can be done with the graph, with the chosen wire, or with the chosen node. */
export function SheetBar({ flow }: { flow: ReactFlowInstance<TicketNode, StrandEdge> | null }) {
  const list = useStore(wiringStore, (state) => state.list);
  const wire = useStore(wiringStore, (state) => state.wire);
  return (
    <header className={styles.bar}>
      <button
        type="button"
        className={styles.word}
        aria-expanded={list === 'add'}
        onClick={() => setWiring({ list: list === 'add' ? null : 'add' })}
      >
        {strings.add}
      </button>
      {wire ? <WireActions /> : <NodeActions />}
      <span className={styles.push} />
      <button type="button" className={styles.word} onClick={() => void flow?.fitView({ padding: 0.06 })}>
        {strings.seeAll}
      </button>
      <button type="button" className={styles.word} onClick={() => void flow?.zoomTo(1)}>
        {strings.readable}
      </button>
      <button type="button" className={styles.fold} onClick={() => setView({ wiringOpen: false })}>
        {strings.fold}
      </button>
    </header>
  );
}
