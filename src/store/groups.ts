import type { Job } from '../graph/job.ts';
import type { RegionGroup } from '../graph/region-edits.ts';
import { freshId } from './edits.ts';

const LONGEST_NAME = 80;

/** The job with a new group of regions at the end. */
export function withGroup(job: Job, name: string, regions: readonly string[]): Job {
  const id = freshId('group', job.groups);
  const group = { id, name: name.trim().slice(0, LONGEST_NAME), regions: [...new Set(regions)] };
  return { ...job, groups: [...job.groups, group] };
}

function withChanged(job: Job, id: string, change: (group: RegionGroup) => RegionGroup): Job {
  const groups = job.groups.map((group) => (group.id === id ? change(group) : group));
  return groups.every((group, i) => group === job.groups[i]) ? job : { ...job, groups };
}

/** The job with a group called otherwise; an empty name changes nothing. */
export function renameGroup(job: Job, id: string, name: string): Job {
  const wanted = name.trim().slice(0, LONGEST_NAME);
  return withChanged(job, id, (group) =>
    wanted === '' || wanted === group.name ? group : { ...group, name: wanted },
  );
}

/** The job without a group; its regions stay as they are. */
export function deleteGroup(job: Job, id: string): Job {
  const groups = job.groups.filter((group) => group.id !== id);
  return groups.length === job.groups.length ? job : { ...job, groups };
}

/** The job with regions added to a group that are not in it yet. */
export function addToGroup(job: Job, id: string, regions: readonly string[]): Job {
  return withChanged(job, id, (group) => {
    const all = [...new Set([...group.regions, ...regions])];
    return all.length === group.regions.length ? group : { ...group, regions: all };
  });
}

/** The job with regions taken out of a group. */
export function takeFromGroup(job: Job, id: string, regions: readonly string[]): Job {
  const out = new Set(regions);
  return withChanged(job, id, (group) => {
    const left = group.regions.filter((region) => !out.has(region));
    return left.length === group.regions.length ? group : { ...group, regions: left };
  });
}

/** "Group 1", or the next number that no group is called. */
export function freshGroupName(groups: readonly RegionGroup[], nameOf: (place: number) => string): string {
  const taken = new Set(groups.map(({ name }) => name));
  let place = 1;
  while (taken.has(nameOf(place))) place++;
  return nameOf(place);
}
