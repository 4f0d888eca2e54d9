import type { Picture } from '../../workers/client.ts';

/** Tiles share an edge this wide, px, so that no seam shows between them however small they are drawn. */
const SHARED_PX = 8;
const TILE_PX = 512;
/** So many tiles are made at a time; the page draws in between. */
const AT_ONCE = 4;

export interface Tile {
  bitmap: ImageBitmap;
  /** Place in the picture, px. */
  x: number;
  y: number;
}

/** A picture in tiles that can be drawn; whoever holds it closes it. */
export interface TiledPicture {
  picture: Picture;
  tiles: readonly Tile[];
}

/** Where tiles begin along a length. */
export function tileStarts(length: number): number[] {
  const starts = [0];
  while (starts.at(-1)! + TILE_PX < length) starts.push(starts.at(-1)! + TILE_PX - SHARED_PX);
  return starts;
}

export function closeTiles({ tiles }: Pick<TiledPicture, 'tiles'>): void {
  for (const { bitmap } of tiles) bitmap.close();
}

/** Cuts a picture into tiles; null when it was called off meanwhile. */
export async function cutTiles(picture: Picture, signal: AbortSignal): Promise<TiledPicture | null> {
  const image = new ImageData(picture.pixels, picture.width, picture.height);
  const places = tileStarts(picture.height).flatMap((y) => tileStarts(picture.width).map((x) => ({ x, y })));
  const tiles: Tile[] = [];
  for (let from = 0; from < places.length; from += AT_ONCE) {
    const made = places.slice(from, from + AT_ONCE).map(async ({ x, y }) => {
      const width = Math.min(TILE_PX, picture.width - x);
      const height = Math.min(TILE_PX, picture.height - y);
      return { bitmap: await createImageBitmap(image, x, y, width, height), x, y };
    });
    tiles.push(...(await Promise.all(made)));
    if (from > 0) await new Promise((resolve) => setTimeout(resolve));
    if (!signal.aborted) continue;
    closeTiles({ tiles });
    return null;
  }
  return { picture, tiles };
}
