import { type PointerEvent, useEffect, useRef, useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import type { Stock } from '../../graph/inks.ts';
import type { FormLayout } from '../../ink/form/layout.ts';
import type { FormReadings } from '../../ink/form/read-form.ts';
import styles from './Inks.module.css';
import { readPicture } from './read-picture.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.test;

interface FormPictureProps {
  client: Client;
  form: FormLayout;
  paper: Stock;
  onRead(readings: FormReadings): void;
}

/** A photo or scan of the printed form: its four crosses are pointed at, then every patch is read. */
export function FormPicture({ client, form, paper, onRead }: FormPictureProps) {
  const [picture, setPicture] = useState<{ name: string; url: string; asset: string } | null>(null);
  const [corners, setCorners] = useState<readonly (readonly [number, number])[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const url = useRef<string | null>(null);
  useEffect(() => () => void (url.current && URL.revokeObjectURL(url.current)), []);

  const open = async (file: File | undefined) => {
    if (!file) return;
    if (url.current) URL.revokeObjectURL(url.current);
    url.current = URL.createObjectURL(file);
    setCorners([]);
    setTrouble(null);
    const asset = await client.addAsset({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
    setPicture({ name: file.name, url: url.current, asset });
  };
  const point = async ({ currentTarget, clientX, clientY }: PointerEvent<HTMLImageElement>) => {
    const { left, top, width, height } = currentTarget.getBoundingClientRect();
    const next = [
      ...(corners.length === 4 ? [] : corners),
      [(clientX - left) / width, (clientY - top) / height] as const,
    ];
    setCorners(next);
    setTrouble(null);
    if (next.length < 4) return;
    try {
      const shape = currentTarget.naturalHeight / currentTarget.naturalWidth;
      onRead(await readPicture(client, { asset: picture!.asset, shape, corners: next, form, paper }));
    } catch (error) {
      setCorners([]);
      setTrouble((error as Error).message);
    }
  };
  return (
    <section className={styles.photo} aria-label={texts.picture}>
      <label className={styles.file}>
        {texts.picture}{' '}
        <input type="file" accept="image/*" onChange={({ target }) => void open(target.files?.[0])} />
      </label>
      {trouble && <p role="alert">{trouble}</p>}
      {picture && (
        <>
          <p role="status">{corners.length === 4 ? texts.read : texts.corners[corners.length]}</p>
          <span className={styles.pointed}>
            <img
              src={picture.url}
              alt={picture.name}
              draggable={false}
              onPointerDown={(event) => void point(event)}
            />
            {corners.map(([x, y], i) => (
              <span
                key={`${x} ${y}`}
                className={styles.corner}
                style={{ left: `${100 * x}%`, top: `${100 * y}%` }}
              >
                {i + 1}
              </span>
            ))}
          </span>
        </>
      )}
    </section>
  );
}
