import { useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import { strings } from '../strings.ts';
import styles from './DeliverButton.module.css';
import { DeliverDialog } from './DeliverDialog.tsx';

/** Opens the sheet from which plates and pictures are delivered. */
export function DeliverButton({ client }: { client: Client }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className={styles.opener} aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {strings.app.deliver}
      </button>
      {open && <DeliverDialog client={client} onClose={() => setOpen(false)} />}
    </>
  );
}
