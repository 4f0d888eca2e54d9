import type { Ink, Shelf } from '../graph/inks.ts';

/** Generic inks of our own, of no maker: colours of solids on a white uncoated stock. Invented, not measured. */
export const DEMO_INKS: Ink[] = [
  { id: 'water-butt', name: 'Water butt', lab: [45, -25, -7], opacity: 0.005 },
  { id: 'pantile', name: 'Pantile', lab: [66, 40, 49], opacity: 0.005 },
  { id: 'damson', name: 'Damson', lab: [31, 30, -17], opacity: 0.005 },
  { id: 'flowerpot', name: 'Flowerpot', lab: [50, 44, 38], opacity: 0.005 },
  { id: 'privet', name: 'Privet', lab: [48, -24, 30], opacity: 0.01 },
  { id: 'straw-bale', name: 'Straw bale', lab: [78, 6, 52], opacity: 0.02 },
  { id: 'wet-roof', name: 'Wet roof', lab: [42, -3, -21], opacity: 0.005 },
  { id: 'shed-at-night', name: 'Shed at night', lab: [21, 3, -23], opacity: 0.005 },
  { id: 'rhubarb', name: 'Rhubarb', lab: [64, 46, 17], opacity: 0.005 },
  { id: 'soot', name: 'Soot', lab: [20, 1, 1], opacity: 0.02 },
  { id: 'glasshouse', name: 'Glasshouse', lab: [86, -16, 7], opacity: 0.005 },
  { id: 'compost', name: 'Compost', lab: [30, 14, 17], opacity: 0.02 },
  { id: 'limewash', name: 'Limewash', lab: [94, 0, -1], opacity: 0.85 },
];

/** The shelf that a person starts with. */
export const DEMO_SHELF: Shelf = {
  format: 'keyblock-shelf',
  version: 1,
  paper: { lab: [95, 0.5, -2], surface: 'uncoated' },
  inks: DEMO_INKS,
};
