import { describe, expect, it } from 'vitest';
import { pressOf } from '../../../src/press/profiles.ts';
import { toleranceOf } from '../../../src/press/tolerance.ts';
import { defaultJob, withSettings } from '../support/jobs.ts';

const JOB = defaultJob({});

describe('how far plates may drift', () => {
  it('is what the press of the job says', () => {
    const job = { ...JOB, press: pressOf('stencil') };
    expect(toleranceOf(job)).toEqual({ alongMm: 1, acrossMm: 0.5, feed: 'down' });
  });

  it('is what Register offset says where no press is chosen', () => {
    const job = withSettings(JOB, {
      'register-offset': { toleranceAlongMm: 0.7, toleranceAcrossMm: 0.1, feedEdge: 'left' },
    });
    expect(toleranceOf(job)).toEqual({ alongMm: 0.7, acrossMm: 0.1, feed: 'across' });
  });

  it('turns with the feed edge of Press sheet', () => {
    const node = { id: 'sheet', kind: 'press-sheet', settings: { feedEdge: 'right' }, bypassed: false };
    const graph = { ...JOB.graph, nodes: [...JOB.graph.nodes, node] };
    expect(toleranceOf({ ...JOB, graph }).feed).toBe('across');
  });
});
