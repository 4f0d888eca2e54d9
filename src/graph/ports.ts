/** What a wire can carry. A wire joins equal types. */
export const PORT_TYPES = [
  'drawing',
  'regions',
  'inks',
  'recipes',
  'area',
  'plates',
  'paper',
  'sheet',
  'proof',
] as const;

export type PortType = (typeof PORT_TYPES)[number];

export interface InputPort {
  readonly type: PortType;
  /** An input that may stay without a wire. */
  readonly optional?: true;
}

export interface OutputPort {
  readonly type: PortType;
}
