import type { Client } from '../../../workers/client.ts';
export function DeliverButton(_: { client: Client }) {
  return <button type="button">Deliver</button>;
}
