import type { ReactFlowInstance } from '@xyflow/react';
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob } from '../store/hooks.ts';
import { setView, viewStore } from '../store/view-store.ts';
import { add, insert, remove, titleOf, unwire } from './actions.ts';
import { Flow } from './Flow.tsx';
import type { StrandEdge, TicketNode } from './flow-parts.ts';
import { kindsFor } from './graph-edits.ts';
import { KindList } from './KindList.tsx';
import styles from './Sheet.module.css';
import { SheetBar } from './SheetBar.tsx';
import { strings } from './strings.ts';
import { restWiring, setWiring, wiringStore } from './wiring-store.ts';

const ALL_KINDS = [...nodeKinds.values()];

/** Takes the focus while it is shown and gives it back afterwards. */
function useOwnFocus(sheet: React.RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const before = document.activeElement;
    sheet.current?.focus();
    return () => {
      restWiring();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, [sheet]);
}

/** Lets go of the last thing taken up; with nothing in hand, folds the sheet. */
function stepBack(): void {
  const { from, wire, list, refused } = wiringStore.getState();
  if (list) setWiring({ list: null });
  else if (from || wire || refused) setWiring({ from: null, wire: null });
  else setView({ wiringOpen: false });
}

/** Where Escape has a meaning of its own. */
const ELSEWHERE = 'aside input, aside select, dialog, [role="dialog"], [role="menu"]';

/** Escape steps back wherever the focus is, except where it has a meaning of its own. */
function useEscape(): void {
  useEffect(() => {
    const listen = ({ key, target }: globalThis.KeyboardEvent) => {
      if (key !== 'Escape') return;
      const elsewhere = target instanceof HTMLElement && target.closest(ELSEWHERE) !== null;
      if (!elsewhere) stepBack();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}

function deleteChosen({ key, target, currentTarget }: KeyboardEvent<HTMLElement>): void {
  if (key !== 'Delete' || (target instanceof HTMLElement && target.matches('input'))) return;
  const { wire } = wiringStore.getState();
  const { node } = viewStore.getState();
  if (wire) unwire(wire);
  else if (node) remove(node);
  currentTarget.focus();
}

/** What the hand is doing, or why the last thing could not be. */
function Message() {
  const refused = useStore(wiringStore, (state) => state.refused);
  const from = useStore(wiringStore, (state) => state.from);
  const wire = useStore(wiringStore, (state) => state.wire);
  if (refused)
    return (
      <p className={styles.message} role="alert" data-grave="true">
        {refused}
      </p>
    );
  const wired = wire && strings.wireChosen(wire.from.port, titleOf(wire.from.node), titleOf(wire.to.node));
  return (
    <p className={styles.message} role="status">
      {from ? strings.choosing(titleOf(from.node), from.port) : (wired ?? strings.hint)}
    </p>
  );
}

function Lists() {
  const list = useStore(wiringStore, (state) => state.list);
  const wire = useStore(wiringStore, (state) => state.wire);
  const graph = useJob((job) => job.graph);
  if (list === 'add') return <KindList title={strings.add} kinds={ALL_KINDS} choose={add} />;
  if (list !== 'insert' || !wire) return null;
  return <KindList title={strings.insert} kinds={kindsFor(graph, nodeKinds, wire)} choose={insert} />;
}

/** The wiring unfolded: a sheet that lies over the print. */
export function WiringSheet() {
  const sheet = useRef<HTMLElement>(null);
  const [flow, setFlow] = useState<ReactFlowInstance<TicketNode, StrandEdge> | null>(null);
  useOwnFocus(sheet);
  useEscape();
  return (
    <section
      ref={sheet}
      className={styles.sheet}
      aria-label={strings.sheet}
      tabIndex={-1}
      onKeyDown={deleteChosen}
    >
      <SheetBar flow={flow} />
      <div className={styles.stage}>
        <Flow onReady={setFlow} />
        <Lists />
      </div>
      <Message />
    </section>
  );
}
