import { useView } from '../../store/hooks.ts';
import { HatchedRegions } from './HatchedRegions.tsx';

/** The chosen regions. */
export function ChosenRegions() {
  return <HatchedRegions ids={useView((state) => state.chosen)} hatch="chosen-hatch" />;
}
