import { useEffect, useRef } from 'react';
import { useResults } from '../store/hooks.ts';

/** The print. */
export function PrintView() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useResults((state) => state.picture);
  useEffect(() => {
    if (!picture || !canvas.current) return;
    canvas.current.width = picture.width;
    canvas.current.height = picture.height;
    canvas.current
      .getContext('2d')!
      .putImageData(new ImageData(picture.pixels, picture.width, picture.height), 0, 0);
  }, [picture]);
  return <canvas ref={canvas} style={{ maxHeight: '100%', maxWidth: '100%' }} />;
}
