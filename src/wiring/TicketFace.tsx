import { strings } from './strings.ts';
import styles from './Ticket.module.css';
import { TicketPicture } from './TicketPicture.tsx';
import type { Ticket } from './use-ticket.ts';

/** What is written on a ticket: title, summary, complaints, time. */
export function TicketFace({ ticket }: { ticket: Ticket }) {
  const { node, kind, summary, complaints, seconds, thumbnail } = ticket;
  const grave = complaints.some(({ severity }) => severity === 'error');
  return (
    <>
      <TicketPicture thumbnail={thumbnail} />
      <span className={styles.words}>
        <span className={styles.title}>{kind.title}</span>
        <span className={styles.summary}>{node.bypassed ? strings.bypassed : summary}</span>
      </span>
      {complaints.length > 0 && (
        <span
          className={styles.mark}
          data-grave={grave}
          title={complaints.map(({ message }) => message).join('\n')}
        >
          <span aria-hidden="true">{complaints.length}</span>
          <span className={styles.unseen}>{strings.complaints(complaints.length)}</span>
        </span>
      )}
      {seconds && (
        <span className={styles.time}>
          <span aria-hidden="true">{strings.seconds(seconds)}</span>
          <span className={styles.unseen}>{strings.took(seconds)}</span>
        </span>
      )}
    </>
  );
}
