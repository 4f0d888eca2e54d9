import { useEffect, useRef } from 'react';
import type { Thumbnail } from '../../workers/client.ts';
import styles from './Ticket.module.css';

/** What a node gives, in small; an empty place keeps the words of all tickets in line. */
export function TicketPicture({ thumbnail }: { thumbnail: Thumbnail | null }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (!thumbnail || !canvas.current) return;
    const { width, height, pixels } = thumbnail;
    canvas.current.width = width;
    canvas.current.height = height;
    canvas.current.getContext('2d')?.putImageData(new ImageData(pixels, width, height), 0, 0);
  }, [thumbnail]);
  return (
    <span className={styles.picture} aria-hidden="true">
      {thumbnail && <canvas ref={canvas} />}
    </span>
  );
}
