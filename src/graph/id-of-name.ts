/** An id made of a name: lower case, dashes for what an id may not hold. */
export function idOfName(name: string): string {
  const plain = name.normalize('NFD').replace(/[\u0300-\u036f]/g, '');
  const id = plain.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return id.replace(/^-|-$/g, '').slice(0, 64) || 'ink';
}
