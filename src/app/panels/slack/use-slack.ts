import { useEffect } from 'react';
import { useStore } from 'zustand';
import { slackStore } from '../../../store/slack-store.ts';
import { watchSlack } from '../../../store/slack-watch.ts';
import { filesStore } from '../../files/files-store.ts';

/** The register slack of the document, worked out while it is wanted. */
export function useSlack(wanted: boolean) {
  const client = useStore(filesStore, (state) => state.client);
  useEffect(() => (client && wanted ? watchSlack(client) : undefined), [client, wanted]);
  return useStore(slackStore, ({ slack }) => (wanted ? slack : null));
}
