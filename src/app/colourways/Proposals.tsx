import { useMemo, useRef, useState } from 'react';
import { Cancelled, type Client } from '../../../workers/client.ts';
import { type ProposalRules, proposalRulesSchema } from '../../graph/proposal-rules.ts';
import type { Proposal } from '../../ink/colourways/propose.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { recipeKey, recipesInUse } from '../../store/recipe-list.ts';
import { platesOf } from '../../view/plates-of.ts';
import { usePrintColours } from '../panels/use-print-colours.ts';
import { Sheet } from '../sheets/Sheet.tsx';
import styles from './Colourways.module.css';
import { PaletteList } from './PaletteList.tsx';
import { Pins } from './Pins.tsx';
import { ProposalCard } from './ProposalCard.tsx';
import { RuleFields } from './RuleFields.tsx';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.proposals;
const USUAL_COUNT = 6;

interface Wish {
  rules: ProposalRules;
  count: number;
  seed: number;
}

/** Other layouts of recipes over the regions, by rules; those one likes become colourways. */
export function Proposals({ client }: { client: Client }) {
  const job = useJob((each) => each);
  const inHand = useView((state) => state.inHand);
  const plates = useMemo(() => platesOf(job), [job]);
  const found = usePrintColours();
  const colours = typeof found === 'string' ? null : found;
  const [wish, setWish] = useState<Wish>(() => ({
    rules: proposalRulesSchema.parse({
      palette: recipesInUse(job)
        .slice(0, 24)
        .map((recipe) => ({ recipe })),
    }),
    count: USUAL_COUNT,
    seed: 1,
  }));
  const [running, setRunning] = useState<{ done: number; of: number } | null>(null);
  const [result, setResult] = useState<{ proposals: Proposal[]; asked: number } | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const stop = useRef<AbortController | null>(null);
  const { rules } = wish;
  const held = new Set(rules.palette.map(({ recipe }) => recipeKey(recipe)));
  const withRules = (change: Partial<ProposalRules>) => setWish({ ...wish, rules: { ...rules, ...change } });

  const go = async () => {
    stop.current = new AbortController();
    setTrouble(null);
    setRunning({ done: 0, of: wish.count });
    try {
      const options = { signal: stop.current.signal, onProgress: setRunning };
      const proposals = await client.run('propose', { job, ...wish }, options);
      setResult({ proposals, asked: wish.count });
    } catch (error) {
      if (!(error instanceof Cancelled)) setTrouble((error as Error).message);
    } finally {
      setRunning(null);
    }
  };
  return (
    <Sheet title={texts.title}>
      <div className={styles.proposals}>
        <section className={styles.wish} aria-label={texts.rules}>
          <p className={styles.quiet}>{texts.help}</p>
          <p className={styles.go}>
            {running ? (
              <button type="button" className={styles.main} onClick={() => stop.current?.abort()}>
                {texts.stop}
              </button>
            ) : (
              <button
                type="button"
                className={styles.main}
                disabled={rules.palette.length === 0}
                onClick={() => void go()}
              >
                {texts.go}
              </button>
            )}
            {running && <span role="status">{texts.running(running.done, running.of)}</span>}
          </p>
          <PaletteList
            palette={rules.palette}
            plates={plates}
            colours={colours}
            onChange={(palette) => withRules({ palette: [...palette], frame: null })}
          />
          <button
            type="button"
            className={styles.word}
            disabled={!inHand || held.has(recipeKey(inHand)) || rules.palette.length >= 24}
            onClick={() => inHand && withRules({ palette: [...rules.palette, { recipe: inHand }] })}
          >
            {texts.addHand}
          </button>
          <RuleFields
            {...wish}
            plates={plates}
            onRules={withRules}
            onCount={(count) => setWish({ ...wish, count })}
            onSeed={(seed) => setWish({ ...wish, seed })}
          />
          <Pins />
          {trouble && <p role="alert">{trouble}</p>}
        </section>
        <section className={styles.results} aria-label={texts.title}>
          {result && result.proposals.length < result.asked && (
            <p role="status">{texts.fewer(result.proposals.length, result.asked)}</p>
          )}
          <ol>
            {result?.proposals.map((proposal, i) => (
              <ProposalCard
                // biome-ignore lint/suspicious/noArrayIndexKey: proposals have no names, and never change places
                key={i}
                client={client}
                number={i + 1}
                proposal={proposal}
                rules={rules}
              />
            ))}
          </ol>
        </section>
      </div>
    </Sheet>
  );
}
