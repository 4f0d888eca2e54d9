/** Every text of the window that does not come from a declaration, by place. */
export const strings = {
  app: { name: 'Keyblock', undo: 'Undo', redo: 'Redo', deliver: 'Deliver', cancel: 'Cancel' },
  isolation:
    'This page needs shared memory: its host must send the headers Cross-Origin-Opener-Policy: same-origin and Cross-Origin-Embedder-Policy: require-corp.',
  opening: 'Opening',
  columns: { left: 'Plates and recipes', right: 'Wiring and settings' },
  views: {
    label: 'What the print shows',
    proof: 'proof',
    plate: 'plate',
    regions: 'regions',
    slack: 'slack',
  },
} as const;
