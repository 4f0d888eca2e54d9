import { areaMask } from './area-mask.ts';
import { borderPlaces } from './border-places.ts';
import { borders } from './borders.ts';
import { changeDepth } from './change-depth.ts';
import { chooseBy } from './choose-by.ts';
import { components } from './components.ts';
import { countLabels } from './count-labels.ts';
import { coverage } from './coverage.ts';
import { deckle } from './deckle.ts';
import { depth } from './depth.ts';
import { eraseMarks } from './despeckle.ts';
import { columnDistance, squaredDistance } from './distance.ts';
import { drawMarks } from './draw-marks.ts';
import { evenLight } from './even-light.ts';
import { evenScan } from './even-scan.ts';
import { fill } from './fill.ts';
import { fillWalls } from './fill-walls.ts';
import { filmSide } from './film-side.ts';
import { findRecipes } from './find-recipes.ts';
import { findRooms } from './find-rooms.ts';
import { findTilt } from './find-tilt.ts';
import { fitRough } from './fit-rough.ts';
import { grain } from './grain.ts';
import { grainTile } from './grain-tile.ts';
import { grow } from './grow.ts';
import { handLines } from './hand-lines.ts';
import { heavier } from './heavier.ts';
import { histogram } from './histogram.ts';
import { inkLayer, multiplyLayers } from './ink-layer.ts';
import { inkOnTooth } from './ink-on-tooth.ts';
import { inkShare } from './ink-share.ts';
import { interleave } from './interleave.ts';
import { keepTopology } from './keep-topology.ts';
import { labelEdges } from './label-edges.ts';
import { layArt } from './lay-art.ts';
import { markPlate } from './mark-plate.ts';
import { mean } from './mean.ts';
import { meanUnder } from './mean-under.ts';
import { measureRegions } from './measure-regions.ts';
import { measureWalls } from './measure-walls.ts';
import { nearDistance } from './near-distance.ts';
import { offset } from './offset.ts';
import { openings } from './openings.ts';
import { paperBlocks } from './paper-blocks.ts';
import { paperLight } from './paper-light.ts';
import { paperNear } from './paper-near.ts';
import { paperTexture } from './paper-texture.ts';
import { fillPinholes, findPinholes } from './pinholes.ts';
import { place } from './place.ts';
import { plateSets } from './plate-sets.ts';
import { pressEdges } from './press-edges.ts';
import { pressMap } from './press-map.ts';
import { pressPrint } from './press-print.ts';
import { printLine } from './print-line.ts';
import { proof } from './proof.ts';
import { proofMany } from './proof-many.ts';
import { alignLines } from './redraw/align.ts';
import { countOverlaps } from './redraw/overlaps.ts';
import { reduceCoverage, reduceLabels } from './reduce.ts';
import { regionTints } from './region-tints.ts';
import { relabel } from './relabel.ts';
import { ridgeWidths } from './ridge-widths.ts';
import { roughColours } from './rough-colours.ts';
import { sampleSpots } from './sample-spots.ts';
import { sauvola } from './sauvola.ts';
import { scanTexture } from './scan-texture.ts';
import { screenAm } from './screen/am.ts';
import { blueNoise } from './screen/blue-noise.ts';
import { dotsThere } from './screen/dots-there.ts';
import { enlarge } from './screen/enlarge.ts';
import { screenFm } from './screen/fm.ts';
import { setEdges } from './set-edges.ts';
import { showThrough } from './show-through.ts';
import { shrinkProof } from './shrink-proof.ts';
import { shrinkRough } from './shrink-rough.ts';
import { siftMarks } from './sift-marks.ts';
import { slack } from './slack.ts';
import { slackPoints } from './slack-points.ts';
import { solids } from './solids.ts';
import { surveyLine } from './survey-line.ts';
import { thinRuns } from './thin-runs.ts';
import { toChange } from './to-change.ts';
import { toneTable } from './tone-table.ts';
import { trap } from './trap.ts';
import { within } from './within.ts';

/**
 * Kernels that work on a range of rows (or columns) of their output and read whole inputs in place. Any split
 * gives the same bytes, and running a range twice does no harm.
 */
export const bandKernels = {
  areaMask,
  chooseBy,
  layArt,
  markPlate,
  changeDepth,
  columnDistance,
  coverage,
  deckle,
  depth,
  drawMarks,
  enlarge,
  eraseMarks,
  evenLight,
  fill,
  fillPinholes,
  filmSide,
  grain,
  grow,
  heavier,
  inkLayer,
  inkOnTooth,
  inkShare,
  interleave,
  labelEdges,
  multiplyLayers,
  nearDistance,
  offset,
  paperBlocks,
  paperNear,
  paperTexture,
  place,
  plateSets,
  pressEdges,
  pressPrint,
  printLine,
  proof,
  proofMany,
  reduceCoverage,
  reduceLabels,
  relabel,
  sauvola,
  scanTexture,
  screenAm,
  screenFm,
  setEdges,
  showThrough,
  shrinkProof,
  shrinkRough,
  slack,
  squaredDistance,
  toChange,
  toneTable,
  trap,
  within,
};

/** Kernels that need the whole picture at once and give back a result. */
export const wholeKernels = {
  alignLines,
  blueNoise,
  dotsThere,
  countOverlaps,
  borderPlaces,
  borders,
  components,
  countLabels,
  evenScan,
  fillWalls,
  findPinholes,
  findRecipes,
  findRooms,
  findTilt,
  fitRough,
  grainTile,
  handLines,
  histogram,
  keepTopology,
  mean,
  measureRegions,
  measureWalls,
  openings,
  paperLight,
  pressMap,
  regionTints,
  ridgeWidths,
  roughColours,
  sampleSpots,
  siftMarks,
  slackPoints,
  solids,
  surveyLine,
  thinRuns,
  meanUnder,
};
