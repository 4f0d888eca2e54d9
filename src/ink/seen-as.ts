/** Whose eyes: usual ones, or those without the cones for long, middle or short waves. */
export const EYES = ['usual', 'protan', 'deutan', 'tritan'] as const;
export type Eyes = (typeof EYES)[number];

/** Red, green, blue of linear sRGB as those eyes see them, row by row. */
const MATRICES = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const;

/**
 * The matrix that shows linear sRGB as eyes without one kind of cone see it (severity 1), for SVG's feColorMatrix:
 * four rows of five numbers.
 *
 * Source: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE TVCG 15 (2009) 1291-1298, table of severity 1.0.
 */
export function eyesMatrix(eyes: Exclude<Eyes, 'usual'>): string {
  const rows = [0, 3, 6].map((start) => [...MATRICES[eyes].slice(start, start + 3), 0, 0].join(' '));
  return [...rows, '0 0 0 1 0'].join(' ');
}
