import { describe, expect, it } from 'vitest';
import {
  addToGroup,
  deleteGroup,
  freshGroupName,
  renameGroup,
  takeFromGroup,
  withGroup,
} from '../../../src/store/groups.ts';
import { defaultJob, reopened } from '../support/jobs.ts';

const start = defaultJob({});
const leaves = withGroup(start, ' Leaves ', ['r1', 'r2', 'r1']);

describe('groups of regions', () => {
  it('have a name and every region once, and outlive a save', () => {
    expect(leaves.groups).toEqual([{ id: 'group', name: 'Leaves', regions: ['r1', 'r2'] }]);
    const two = withGroup(leaves, 'Lettering', ['r3']);
    expect(two.groups.map(({ id }) => id)).toEqual(['group', 'group-2']);
    expect(reopened(two).groups).toEqual(two.groups);
  });

  it('take regions in and let them go', () => {
    const more = addToGroup(leaves, 'group', ['r2', 'r3']);
    expect(more.groups[0]!.regions).toEqual(['r1', 'r2', 'r3']);
    expect(takeFromGroup(more, 'group', ['r1', 'r9']).groups[0]!.regions).toEqual(['r2', 'r3']);
  });

  it('are renamed, but never to nothing, and deleted', () => {
    expect(renameGroup(leaves, 'group', ' Foliage ').groups[0]!.name).toBe('Foliage');
    expect(renameGroup(leaves, 'group', '  ')).toBe(leaves);
    expect(deleteGroup(leaves, 'group').groups).toEqual([]);
  });

  it('are the same job when nothing changes', () => {
    expect(addToGroup(leaves, 'group', ['r1'])).toBe(leaves);
    expect(takeFromGroup(leaves, 'group', ['r9'])).toBe(leaves);
    expect(renameGroup(leaves, 'group', 'Leaves')).toBe(leaves);
    expect(deleteGroup(leaves, 'gone')).toBe(leaves);
  });

  it('get a name that none has', () => {
    const nameOf = (place: number) => `Group ${place}`;
    expect(freshGroupName([], nameOf)).toBe('Group 1');
    expect(freshGroupName(withGroup(start, 'Group 1', []).groups, nameOf)).toBe('Group 2');
  });
});
