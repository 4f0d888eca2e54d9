import type { Complaint, Meant } from '../graph/complaint.ts';

/** A fault without a region is the same one when it lies this near. */
const NEAR_MM = 5;

/** What is remembered of a fault that is meant. */
export function meantOf({ code, plate, region, placeMm }: Complaint): Meant {
  return {
    code,
    ...(plate === undefined ? {} : { plate }),
    ...(region === undefined ? {} : { region }),
    ...(placeMm === undefined ? {} : { placeMm }),
  };
}

/** Whether a fault is one that was said to be meant; its region counts before its place, so that it outlives a redraw. */
export function isMeant(complaint: Complaint, meant: readonly Meant[]): boolean {
  return meant.some((known) => {
    if (known.code !== complaint.code || known.plate !== complaint.plate) return false;
    if (known.region !== complaint.region) return false;
    if (known.region !== undefined || !known.placeMm || !complaint.placeMm) return true;
    const dx = known.placeMm[0] - complaint.placeMm[0];
    const dy = known.placeMm[1] - complaint.placeMm[1];
    return dx * dx + dy * dy <= NEAR_MM * NEAR_MM;
  });
}

/** The faults with those marked that are meant. */
export function marked(complaints: readonly Complaint[], meant: readonly Meant[]): Complaint[] {
  return complaints.map((complaint) =>
    isMeant(complaint, meant) ? { ...complaint, meant: true } : complaint,
  );
}
