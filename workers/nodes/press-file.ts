import { pressFile as kind } from '../../src/nodes/press-file.ts';
import { evaluation } from '../engine/evaluation.ts';

/** What arrives is delivered by the render task; the node itself makes nothing. */
export const pressFile = evaluation(kind, async () => ({}));
