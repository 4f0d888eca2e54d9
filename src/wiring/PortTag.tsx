import { Handle, Position } from '@xyflow/react';
import type { End } from '../graph/job.ts';
import { chooseInput, chooseOutput } from './actions.ts';
import styles from './Flow.module.css';
import { strings } from './strings.ts';

export interface PortTagProps {
  end: End;
  side: 'input' | 'output';
  title: string;
  /** Distance from the ticket's left edge, px. */
  x: number;
  optional: boolean;
  /** Of an output: it is the one being wired. Of an input: it would take the output being wired. */
  lit: boolean;
}

/** A port: drag from it, or press it, to wire it. */
export function PortTag({ end, side, title, x, optional, lit }: PortTagProps) {
  const input = side === 'input';
  const label = input ? strings.input(end.port, title) : strings.output(end.port, title);
  return (
    <Handle
      type={input ? 'target' : 'source'}
      id={end.port}
      position={input ? Position.Top : Position.Bottom}
      className={styles.port}
      style={{ left: x }}
    >
      <button
        type="button"
        className={styles.tag}
        data-side={side}
        data-lit={lit}
        data-optional={optional}
        aria-label={optional ? `${label}, ${strings.optional}` : label}
        aria-pressed={input ? undefined : lit}
        onClick={() => (input ? chooseInput(end) : chooseOutput(end))}
      >
        {end.port}
      </button>
    </Handle>
  );
}
