/** A JSON value with the field at `path` (names and indices, joined by dots) set to something else. */
export function replaced(value: unknown, path: string, field: unknown): unknown {
  const [name, ...rest] = path.split('.');
  const inner = (at: unknown) => (rest.length === 0 ? field : replaced(at, rest.join('.'), field));
  if (Array.isArray(value)) return Object.assign([...value], { [name!]: inner(value[Number(name)]) });
  const object = Object(value) as Record<string, unknown>;
  return { ...object, [name!]: inner(object[name!]) };
}

/** An object without one of its fields. */
export function without(value: object, name: string): object {
  return Object.fromEntries(Object.entries(value).filter(([key]) => key !== name));
}
