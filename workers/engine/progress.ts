/** How far a run is. */
export interface ProgressReport {
  /** Id of the node at work. */
  node: string;
  /** Steps finished of those to run. */
  done: number;
  of: number;
}

export type OnProgress = (report: ProgressReport) => void;
