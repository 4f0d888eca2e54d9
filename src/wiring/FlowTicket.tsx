import { memo } from 'react';
import { useStore } from 'zustand';
import { whyNot } from '../graph/wiring.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob } from '../store/hooks.ts';
import { setView } from '../store/view-store.ts';
import styles from './Flow.module.css';
import { portX } from './measures.ts';
import { PortTag } from './PortTag.tsx';
import { shapeOf } from './shape.ts';
import ticketStyles from './Ticket.module.css';
import { TicketFace } from './TicketFace.tsx';
import { useTicket } from './use-ticket.ts';
import { setWiring, wiringStore } from './wiring-store.ts';

/** A node as a ticket with its inputs along the top and its outputs along the foot. */
export const FlowTicket = memo(function FlowTicket({ id }: { id: string }) {
  const ticket = useTicket(id);
  const graph = useJob((job) => shapeOf(job.graph));
  const from = useStore(wiringStore, (state) => state.from);
  if (!ticket) return null;
  const { kind, node, chosen } = ticket;
  const inputs = Object.entries(kind.inputs);
  const outputs = Object.keys(kind.outputs);
  const takes = (port: string) =>
    from !== null && whyNot(graph, nodeKinds, from, { node: id, port }) === null;
  return (
    <div
      className={`${ticketStyles.ticket} ${styles.ticket}`}
      data-chosen={chosen}
      data-bypassed={node.bypassed}
    >
      <button
        type="button"
        className={styles.face}
        aria-pressed={chosen}
        onClick={() => {
          setView({ node: id });
          setWiring({ wire: null });
        }}
      >
        <TicketFace ticket={ticket} />
      </button>
      {inputs.map(([port, { optional }], i) => (
        <PortTag
          key={`in ${port}`}
          end={{ node: id, port }}
          side="input"
          title={kind.title}
          x={portX(i, inputs.length)}
          optional={optional === true}
          lit={takes(port)}
        />
      ))}
      {outputs.map((port, i) => (
        <PortTag
          key={`out ${port}`}
          end={{ node: id, port }}
          side="output"
          title={kind.title}
          x={portX(i, outputs.length)}
          optional={false}
          lit={from?.node === id && from.port === port}
        />
      ))}
    </div>
  );
});
