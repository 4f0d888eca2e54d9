import { type KeyboardEvent, memo } from 'react';
import { setView } from '../store/view-store.ts';
import { remove } from './actions.ts';
import { strings } from './strings.ts';
import styles from './Ticket.module.css';
import { TicketFace } from './TicketFace.tsx';
import { useTicket } from './use-ticket.ts';

const Row = memo(function Row({ id }: { id: string }) {
  const ticket = useTicket(id);
  if (!ticket) return null;
  const { chosen, node } = ticket;
  const press = ({ key, currentTarget }: KeyboardEvent<HTMLElement>) => {
    if (key !== 'Delete') return;
    const row = currentTarget.parentElement;
    const next = row?.nextElementSibling ?? row?.previousElementSibling;
    next?.querySelector('button')?.focus();
    remove(id);
  };
  return (
    <li>
      <button
        type="button"
        className={styles.row}
        aria-pressed={chosen}
        data-bypassed={node.bypassed}
        onClick={() => setView({ node: chosen ? null : id })}
        onKeyDown={press}
      >
        <TicketFace ticket={ticket} />
      </button>
    </li>
  );
});

/** The tickets as a plain list, top to bottom as the sheet travels. */
export function TicketList({ ids }: { ids: readonly string[] }) {
  return (
    <ol className={styles.list} aria-label={strings.list}>
      {ids.map((id) => (
        <Row key={id} id={id} />
      ))}
    </ol>
  );
}
