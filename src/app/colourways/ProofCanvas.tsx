import { type CSSProperties, useEffect, useRef } from 'react';
import type { Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import { drawSmall } from '../files/small-picture.ts';
import styles from './Colourways.module.css';
import { colourwayTexts } from './strings.ts';
import { useProof } from './use-proof.ts';

interface ProofCanvasProps {
  client: Client;
  job: Job;
  /** The proof is printed at 1/scale. */
  scale: number;
  /** Longest side, px of the screen. */
  longest: number;
  label: string;
  style?: CSSProperties;
}

/** A proof of a job, no larger than asked. */
export function ProofCanvas({ client, job, scale, longest, label, style }: ProofCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useProof(client, job, scale);
  useEffect(() => {
    if (picture) drawSmall(picture, longest * devicePixelRatio, canvas.current!);
  }, [picture, longest]);
  return (
    <span className={styles.proof} style={style}>
      <canvas ref={canvas} role="img" aria-label={label} hidden={!picture} />
      {!picture && <span className={styles.pending}>{colourwayTexts.compare.pending}</span>}
    </span>
  );
}
