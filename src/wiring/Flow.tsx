import '@xyflow/react/dist/base.css';
import { type Connection, ReactFlow, type ReactFlowInstance, type Viewport } from '@xyflow/react';
import { type FocusEvent, useCallback, useEffect, useMemo, useRef } from 'react';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useView } from '../store/hooks.ts';
import { viewStore } from '../store/view-store.ts';
import { wire } from './actions.ts';
import { bringIntoView, type Place, placeOf } from './bring-into-view.ts';
import styles from './Flow.module.css';
import { FlowTicket } from './FlowTicket.tsx';
import { portOffsets, type StrandEdge, strandEdges, type TicketNode, ticketNodes } from './flow-parts.ts';
import { type Layout, layoutOf, type Point } from './layout.ts';
import { MEASURES } from './measures.ts';
import { Strand } from './Strand.tsx';
import { shapeOf } from './shape.ts';
import { setWiring } from './wiring-store.ts';

const NODE_TYPES = { ticket: FlowTicket };
const EDGE_TYPES = { strand: Strand };
const MARGIN = 40;
const SMALLEST = 0.35;

/** Where to look first, at full size: the chosen ticket in the middle, else the top of the graph. */
function firstView({ places }: Layout, room: { width: number; height: number }): Viewport {
  const all = [...places.values()];
  if (all.length === 0) return { x: 0, y: 0, zoom: 1 };
  const middle = (at: Point) => at.x + MEASURES.width / 2;
  const xs = all.map(middle);
  const foot = Math.max(...all.map(({ y }) => y)) + MEASURES.height;
  const chosen = places.get(viewStore.getState().node ?? '');
  const top = all.find(({ y }) => y === 0) ?? all[0]!;
  const wide = Math.max(...xs) - Math.min(...xs) + MEASURES.width + 2 * MARGIN > room.width;
  const x = wide ? middle(chosen ?? top) : (Math.min(...xs) + Math.max(...xs)) / 2;
  const y = chosen ? room.height / 2 - chosen.y - MEASURES.height / 2 : MARGIN;
  return {
    x: room.width / 2 - x,
    y: Math.min(MARGIN, Math.max(room.height - foot - MARGIN, y)),
    zoom: 1,
  };
}

export interface FlowProps {
  onReady(flow: ReactFlowInstance<TicketNode, StrandEdge>): void;
}

/** The graph drawn out. */
export function Flow({ onReady }: FlowProps) {
  const graph = useJob((job) => shapeOf(job.graph));
  const box = useRef<HTMLDivElement>(null);
  const flow = useRef<ReactFlowInstance<TicketNode, StrandEdge>>(null);
  const chosen = useView((state) => state.node);
  const shape = useMemo(() => {
    const layout = layoutOf(graph, MEASURES, (wire) => portOffsets(graph, nodeKinds, wire));
    return {
      layout,
      nodes: ticketNodes(graph, nodeKinds, layout),
      edges: strandEdges(graph, nodeKinds, layout),
    };
  }, [graph]);
  const join = ({ source, sourceHandle, target, targetHandle }: Connection) => {
    if (sourceHandle === null || targetHandle === null) return;
    wire({ node: source, port: sourceHandle }, { node: target, port: targetHandle });
  };
  const show = useCallback((place: Place) => {
    if (flow.current && box.current) bringIntoView(flow.current, box.current, place);
  }, []);
  useEffect(() => {
    const at = shape.layout.places.get(chosen ?? '');
    if (!at || !flow.current) return;
    const { x, y, zoom } = flow.current.getViewport();
    const { width, height } = MEASURES;
    show({ left: x + at.x * zoom, top: y + at.y * zoom, width: width * zoom, height: height * zoom });
  }, [chosen, shape, show]);
  const follow = ({ target }: FocusEvent) => {
    if (target.matches('button:focus-visible'))
      requestAnimationFrame(() => box.current && show(placeOf(target, box.current)));
  };
  return (
    <div ref={box} className={styles.flow}>
      <ReactFlow<TicketNode, StrandEdge>
        nodes={shape.nodes}
        edges={shape.edges}
        nodeTypes={NODE_TYPES}
        edgeTypes={EDGE_TYPES}
        onInit={(ready) => {
          const { clientWidth: width, clientHeight: height } = box.current!;
          void ready.setViewport(firstView(shape.layout, { width, height }));
          flow.current = ready;
          onReady(ready);
        }}
        onConnect={join}
        onFocus={follow}
        onPaneClick={() => setWiring({ wire: null, from: null, list: null })}
        nodesDraggable={false}
        nodesFocusable={false}
        edgesFocusable={false}
        elementsSelectable={false}
        connectOnClick={false}
        deleteKeyCode={null}
        disableKeyboardA11y
        panOnScroll
        zoomOnDoubleClick={false}
        minZoom={SMALLEST}
        maxZoom={1.5}
      />
    </div>
  );
}
