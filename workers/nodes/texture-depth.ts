/** Change of the light that comes back at the full swing of the paper's texture. */
export const TEXTURE_DEPTH = 0.12;
