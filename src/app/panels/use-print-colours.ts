import { useEffect, useMemo, useState } from 'react';
import { type Print, printOf } from '../../nodes/print.ts';
import { useJob } from '../../store/hooks.ts';
import { coloursOf, type PrintColours } from './print-colours.ts';

/** Longest that the colours wait for a quiet moment, ms. */
const PATIENCE_MS = 300;

/** Colours last worked out: panels come and go, prints stay. */
let last: { key: string; colours: PrintColours } | null = null;

/** The colours of the job's print; null before they are worked out, a sentence when they cannot be. */
export function usePrintColours(): PrintColours | string | null {
  const nodes = useJob((job) => job.graph.nodes);
  const print = useMemo(() => printOf(nodes), [nodes]);
  const key = useMemo(() => JSON.stringify(print), [print]);
  const [colours, setColours] = useState<PrintColours | string | null>(last?.colours ?? null);
  useEffect(() => {
    if (last?.key === key) {
      setColours(last.colours);
      return;
    }
    return whenIdle(() => setColours(workOut(key)));
  }, [key]);
  return print ? colours : null;
}

function workOut(key: string): PrintColours | string | null {
  const print = JSON.parse(key) as Print | null;
  if (!print) return null;
  try {
    const colours = coloursOf(print, matchMedia('(color-gamut: p3)').matches ? 'p3' : 'srgb');
    last = { key, colours };
    return colours;
  } catch (error) {
    return (error as Error).message;
  }
}

/** Runs in a quiet moment of the page; returns what calls it off. */
function whenIdle(run: () => void): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(run, 0);
    return () => clearTimeout(timer);
  }
  const handle = requestIdleCallback(run, { timeout: PATIENCE_MS });
  return () => cancelIdleCallback(handle);
}
