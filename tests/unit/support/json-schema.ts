type Schema = Readonly<Record<string, unknown>>;

const NOTES = new Set(['$schema', '$defs', 'id', 'title', 'description', 'default', 'unit', 'help']);

/**
 * Places where a value does not fit a JSON Schema, for the keywords that Keyblock's own schemas use.
 * Throws on any other keyword, so that nothing passes unread.
 */
export function misfits(schema: Schema, value: unknown, root: Schema = schema, place = '$'): string[] {
  const found: string[] = [];
  const must = (fits: boolean, what: string) => {
    if (!fits) found.push(`${place} ${what}`);
  };
  const into = (inner: unknown, field: unknown, name: string | number) =>
    found.push(...misfits(inner as Schema, field, root, `${place}.${name}`));
  const fields = isObject(value) ? Object.entries(value) : [];
  const items = Array.isArray(value) ? value : [];
  const size = typeof value === 'number' ? value : Number.NaN;
  const length = typeof value === 'string' ? value.length : Array.isArray(value) ? value.length : Number.NaN;
  const properties = (schema.properties ?? {}) as Record<string, unknown>;
  const placed = (schema.prefixItems ?? []) as unknown[];

  const keywords: Record<string, (want: never) => void> = {
    $ref: (want: string) => {
      const inner = want
        .split('/')
        .slice(1)
        .reduce((at: unknown, name) => (at as Schema)[name], root);
      found.push(...misfits(inner as Schema, value, root, place));
    },
    type: (want: string | string[]) =>
      must(
        [want].flat().some((type) => typeFits(type, value)),
        `is no ${want}`,
      ),
    const: (want: unknown) => must(value === want, `is not ${want}`),
    enum: (want: unknown[]) => must(want.includes(value), `is none of ${want.join(', ')}`),
    anyOf: (want: Schema[]) =>
      must(
        want.some((inner) => misfits(inner, value, root, place).length === 0),
        'fits none of its shapes',
      ),
    minimum: (want: number) => must(!(size < want), `is below ${want}`),
    maximum: (want: number) => must(!(size > want), `is above ${want}`),
    minLength: (want: number) => must(!(length < want), 'is too short'),
    maxLength: (want: number) => must(!(length > want), 'is too long'),
    minItems: (want: number) => must(!(length < want), 'has too few'),
    maxItems: (want: number) => must(!(length > want), 'has too many'),
    pattern: (want: string) =>
      must(typeof value !== 'string' || new RegExp(want, 'u').test(value), `is not like ${want}`),
    required: (want: string[]) => {
      for (const name of isObject(value) ? want : [])
        must(Object.hasOwn(Object(value), name), `has no ${name}`);
    },
    properties: () => {
      for (const [name, field] of fields) if (name in properties) into(properties[name], field, name);
    },
    propertyNames: (want: Schema) => {
      for (const [name] of fields) into(want, name, name);
    },
    additionalProperties: (want: Schema | false) => {
      for (const [name, field] of fields) {
        if (name in properties) continue;
        if (want === false) must(false, `knows no ${name}`);
        else into(want, field, name);
      }
    },
    prefixItems: () => {
      for (const [i, inner] of placed.entries()) if (i < items.length) into(inner, items[i], i);
    },
    items: (want: Schema | false) => {
      for (const [i, item] of items.entries()) if (i >= placed.length && want !== false) into(want, item, i);
    },
  };
  for (const [keyword, want] of Object.entries(schema)) {
    if (NOTES.has(keyword)) continue;
    const check = keywords[keyword];
    if (!check) throw new Error(`the checker does not know the keyword ${keyword}`);
    check(want as never);
  }
  return found;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

function typeFits(type: string, value: unknown): boolean {
  if (type === 'object') return isObject(value);
  if (type === 'array') return Array.isArray(value);
  if (type === 'null') return value === null;
  if (type === 'integer') return Number.isInteger(value);
  return typeof value === type;
}
