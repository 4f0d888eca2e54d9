import { useMemo } from 'react';
import type { Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import type { ProposalRules } from '../../graph/proposal-rules.ts';
import type { Proposal } from '../../ink/colourways/propose.ts';
import { freshId } from '../../store/edits.ts';
import { useJob } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import styles from './Colourways.module.css';
import { ProofCanvas } from './ProofCanvas.tsx';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.proposals;
const SCALE = 16;
const LONGEST = 220;

/** The job with a proposal as a further colourway, in use. */
export function withProposal(job: Job, { recipes }: Pick<Proposal, 'recipes'>, name: string): Job {
  const id = freshId(name.toLowerCase().replace(/[^a-z0-9]+/g, '-'), job.colourways);
  return { ...job, colourways: [...job.colourways, { id, name, recipes, others: {} }], colourway: id };
}

interface ProposalCardProps {
  client: Client;
  number: number;
  proposal: Proposal;
  rules: ProposalRules;
}

/** A proposal as a small proof, and how well it keeps the rules. */
export function ProposalCard({ client, number, proposal, rules }: ProposalCardProps) {
  const graph = useJob((job) => job);
  const job = useMemo(() => withProposal(graph, proposal, texts.name(number)), [graph, proposal, number]);
  const { kept, different } = proposal;
  const told = [
    texts.contrastKept(kept.contrast),
    kept.contrast < 0.9995 && kept.nearest ? texts.nearest(kept.nearest.distance) : null,
    rules.palette.some(({ sharePercent }) => sharePercent !== undefined)
      ? texts.shares(kept.shareErrorPercent)
      : null,
    rules.frame === null ? null : texts.frameKept(kept.frame),
    texts.ink(kept.totalPercent),
    texts.different(different),
  ].filter((text) => text !== null);
  return (
    <li>
      <ProofCanvas client={client} job={job} scale={SCALE} longest={LONGEST} label={texts.number(number)} />
      <p className={styles.quiet}>{told.join('; ')}.</p>
      <button
        type="button"
        className={styles.word}
        aria-label={texts.keepOf(number)}
        onClick={() =>
          edit(texts.steps.keep(texts.name(number)), (before) =>
            withProposal(before, proposal, texts.name(number)),
          )
        }
      >
        {texts.keep}
      </button>
    </li>
  );
}
