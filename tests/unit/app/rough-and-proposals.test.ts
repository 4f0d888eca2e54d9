import { describe, expect, it } from 'vitest';
import { withProposal } from '../../../src/app/colourways/ProposalCard.tsx';
import { shareOf } from '../../../src/app/colourways/share-text.ts';
import { withMatches, withoutRough } from '../../../src/app/panels/rough/rough-edits.ts';
import type { Matches } from '../../../src/graph/matches.ts';
import { withRough } from '../../../src/graph/with-rough.ts';
import { defaultJob, reopened } from '../support/jobs.ts';

const job = defaultJob({});

describe('a rough taken out', () => {
  it('leaves the job as it was before', () => {
    const { graph } = withoutRough(withRough(job, 'rough.png', 'a'.repeat(64)));
    expect(graph).toEqual(job.graph);
  });
});

describe('recipes of a rough kept', () => {
  it('do not take the place of recipes given by hand', () => {
    const tinted = { ...job, colourways: [{ ...job.colourways[0]!, recipes: { r1: { soot: 20 } } }] };
    const match = {
      anchorMm: [0, 0] as [number, number],
      areaMm2: 1,
      wantedLab: [0, 0, 0] as [number, number, number],
      lab: [0, 0, 0] as [number, number, number],
      distance: 0,
      outOfReach: false,
    };
    const regions: Matches['regions'] = [
      { ...match, id: 'r1', recipe: { straw: 50 } },
      { ...match, id: 'r2', recipe: { brick: 50 } },
    ];
    expect(withMatches(tinted, { regions }).colourways[0]!.recipes).toEqual({
      r1: { soot: 20 },
      r2: { brick: 50 },
    });
  });
});

describe('a proposal kept', () => {
  it('is one more colourway, in use, that can be saved', () => {
    const kept = withProposal(job, { recipes: { r1: { straw: 40 } } }, 'Proposal 1');
    expect(kept.colourway).toBe('proposal-1');
    expect(kept.colourways.at(-1)).toEqual({
      id: 'proposal-1',
      name: 'Proposal 1',
      recipes: { r1: { straw: 40 } },
      others: {},
    });
    expect(withProposal(kept, { recipes: {} }, 'Proposal 1').colourway).toBe('proposal-1-2');
    expect(reopened(kept)).toEqual(kept);
  });
});

describe('a share as typed', () => {
  it.each([
    ['25', { sharePercent: 25 }],
    ['12,5 %', { sharePercent: 12.5 }],
    ['140', { sharePercent: 100 }],
    ['', {}],
    ['half', {}],
  ])('%j is %j', (text, share) => {
    expect(shareOf(text)).toEqual(share);
  });
});
