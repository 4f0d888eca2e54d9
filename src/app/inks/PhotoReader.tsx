import { type PointerEvent, useEffect, useRef, useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import { InkChip } from '../../docket/InkChip.tsx';
import type { Lab, Stock } from '../../graph/inks.ts';
import { labFromPhoto } from '../../ink/from-photo.ts';
import { freshId } from '../../store/edits.ts';
import styles from './Inks.module.css';
import { changeShelf, withInks } from './shelf-store.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.photo;
/** Radius of a spot, as a share of the picture's width. */
const RADIUS = 0.006;

type Rgb = [number, number, number];

interface Photo {
  file: string;
  url: string;
  asset: string;
}

interface PhotoReaderProps {
  client: Client;
  /** The paper that the photo's paper stands for. */
  paper: Stock;
  onClose(): void;
}

/** An ink's solid read from a picture of a print: bare paper first, then the solid. */
export function PhotoReader({ client, paper, onClose }: PhotoReaderProps) {
  const [photo, setPhoto] = useState<Photo | null>(null);
  const [white, setWhite] = useState<Rgb | null>(null);
  const [lab, setLab] = useState<Lab | null>(null);
  const [name, setName] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const url = useRef<string | null>(null);
  useEffect(() => () => void (url.current && URL.revokeObjectURL(url.current)), []);

  const open = async (file: File | undefined) => {
    if (!file) return;
    setTrouble(null);
    setWhite(null);
    setLab(null);
    if (url.current) URL.revokeObjectURL(url.current);
    url.current = URL.createObjectURL(file);
    try {
      const asset = await client.addAsset({
        name: file.name,
        bytes: new Uint8Array(await file.arrayBuffer()),
      });
      setPhoto({ file: file.name, url: url.current, asset });
    } catch (error) {
      setTrouble(texts.cannot(file.name, (error as Error).message));
    }
  };
  const point = async ({ currentTarget, clientX, clientY }: PointerEvent<HTMLImageElement>) => {
    const { left, top, width, height } = currentTarget.getBoundingClientRect();
    const spot = { x: (clientX - left) / width, y: (clientY - top) / height, radius: RADIUS };
    setTrouble(null);
    try {
      const [rgb] = await client.run('spots', { asset: photo!.asset, spots: [spot] });
      if (white) setLab(rounded(labFromPhoto(rgb!, white, paper.lab)));
      else setWhite(rgb!);
    } catch (error) {
      setTrouble((error as Error).message);
    }
  };
  const keep = () => {
    const ink = {
      id: 'photo-ink',
      name: name.trim() || texts.colour,
      lab: lab!,
      opacity: 0.005,
      note: texts.note,
    };
    changeShelf((shelf) => withInks(shelf, [ink], freshId));
    onClose();
  };
  const step = lab ? texts.steps.done : white ? texts.steps.solid : texts.steps.white;
  return (
    <section className={styles.photo} aria-label={texts.title}>
      <p className={styles.quiet}>{texts.hint}</p>
      <label className={styles.file}>
        {texts.choose}{' '}
        <input type="file" accept="image/*" onChange={({ target }) => void open(target.files?.[0])} />
      </label>
      {trouble && <p role="alert">{trouble}</p>}
      {photo && (
        <>
          <p role="status">
            {step}{' '}
            {white && (
              <button
                type="button"
                className={styles.word}
                onClick={() => {
                  setWhite(null);
                  setLab(null);
                }}
              >
                {texts.again}
              </button>
            )}
          </p>
          <img
            src={photo.url}
            alt={texts.pictureOf(photo.file)}
            draggable={false}
            onPointerDown={(event) => void point(event)}
          />
        </>
      )}
      {lab && (
        <p className={styles.read}>
          <InkChip ink={{ id: 'read', name: texts.colour, lab, opacity: 0 }} />
          {texts.colour}: Lab {lab.join(' ')}
          <input
            type="text"
            aria-label={texts.name}
            placeholder={texts.name}
            value={name}
            maxLength={80}
            onChange={({ target }) => setName(target.value)}
          />
          <button type="button" className={styles.word} onClick={keep}>
            {texts.keep}
          </button>
        </p>
      )}
    </section>
  );
}

const rounded = (lab: Lab): Lab => lab.map((value) => Math.round(value * 10) / 10 + 0) as Lab;
