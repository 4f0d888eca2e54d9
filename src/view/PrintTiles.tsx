import type Konva from 'konva';
import { memo, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { Group, Image, Layer, Stage } from 'react-konva';
import { useResults } from '../store/hooks.ts';
import { mark } from '../store/marks.ts';
import { useDesk } from './desk-store.ts';
import { closeTiles, cutTiles, type TiledPicture } from './tiles.ts';

/** Tablets show nothing on a larger canvas. */
const MOST_CANVAS_PIXELS = 16.7e6;
/** From this many screen pixels a picture pixel, the pixels of a full picture show as they are. */
const BARE_PIXELS = 4;

/** Pointers are the desk's: the stage would measure the page at each of their moves. */
const UNTOUCHED = { pointerEvents: 'none' } as const;

/** The newest picture in tiles. The one before stays until all of it is ready. */
function useTiledPicture(): TiledPicture | null {
  const picture = useResults((state) => state.picture);
  const [tiled, setTiled] = useState<TiledPicture | null>(null);
  useEffect(() => {
    if (!picture) return;
    const called = new AbortController();
    void cutTiles(picture, called.signal).then((made) => made && setTiled(made));
    return () => called.abort();
  }, [picture]);
  useEffect(() => () => tiled?.tiles && closeTiles(tiled), [tiled]);
  return tiled;
}

/** All tiles of one picture, in its own pixels. */
const Tiles = memo(({ tiled }: { tiled: TiledPicture }) =>
  tiled.tiles.map(({ bitmap, x, y }) => (
    <Image key={`${x} ${y}`} image={bitmap} x={x} y={y} listening={false} perfectDrawEnabled={false} />
  )),
);

/** The pixels of the print, where the camera has them. */
export function PrintTiles() {
  const tiled = useTiledPicture();
  const { width, height } = useDesk((state) => state.desk);
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const sheet = useDesk((state) => state.sheet);
  const layer = useRef<Konva.Layer>(null);
  const ratio = Math.min(devicePixelRatio, Math.sqrt(MOST_CANVAS_PIXELS / Math.max(1, width * height)));
  const scale = tiled ? (pxPerMm * 25.4) / tiled.picture.ppi : 1;
  const smooth = !tiled || tiled.picture.scale > 2 || scale * ratio < BARE_PIXELS;

  useEffect(() => {
    layer.current?.getCanvas().setPixelRatio(ratio);
    layer.current?.batchDraw();
  }, [ratio]);
  useEffect(() => {
    const context = layer.current?.getContext();
    layer.current?.on('beforeDraw', () => context?.setAttr('imageSmoothingQuality', 'medium'));
  }, []);

  useLayoutEffect(() => {
    const told = tiled && layer.current;
    if (!told) return;
    const painted = () => {
      told.off('draw', painted);
      setTimeout(() => mark('keyblock painted', tiled.picture.scale));
    };
    told.on('draw', painted);
    return () => {
      told.off('draw', painted);
    };
  }, [tiled]);

  return (
    <Stage width={width} height={height} listening={false} style={UNTOUCHED}>
      <Layer ref={layer} listening={false} imageSmoothingEnabled={smooth}>
        {tiled && sheet && (
          <Group
            x={x}
            y={y}
            scaleX={scale}
            scaleY={scale}
            clipX={0}
            clipY={0}
            clipWidth={(sheet.width * pxPerMm) / scale}
            clipHeight={(sheet.height * pxPerMm) / scale}
          >
            <Tiles tiled={tiled} />
          </Group>
        )}
      </Layer>
    </Stage>
  );
}
