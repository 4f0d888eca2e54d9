import { type Lab, labSchema } from '../graph/inks.ts';
import { ColourControl } from './ColourControl.tsx';
import type { ControlProps } from './control.ts';
import { FileControl } from './FileControl.tsx';
import type { Field } from './fields.ts';
import { GroupControl } from './GroupControl.tsx';
import { HandEditsControl } from './HandEditsControl.tsx';
import { PerPlateControl } from './PerPlateControl.tsx';
import { PlateControl } from './PlateControl.tsx';
import { RegionsControl } from './RegionsControl.tsx';
import { ChoiceControl, NumberControl, SeedControl, TextControl, YesNoControl } from './SmallControls.tsx';

const GREY: Lab = [50, 0, 0];

/** The control for a setting, by the shape of its schema. A shape that has none shows nothing. */
export function Control({ field, ...props }: ControlProps<Field>) {
  switch (field.as) {
    case 'number':
      return <NumberControl field={field} {...props} />;
    case 'choice':
      return <ChoiceControl field={field} {...props} />;
    case 'per-plate':
      return <PerPlateControl field={field} {...props} />;
    case 'group':
      return <GroupControl field={field} {...props} Part={Control} />;
    case 'yes-no':
      return <YesNoControl field={field} {...props} />;
    case 'seed':
      return <SeedControl field={field} {...props} />;
    case 'file':
      return <FileControl field={field} {...props} />;
    case 'hand-edits':
      return <HandEditsControl field={field} {...props} />;
    case 'regions':
      return <RegionsControl field={field} {...props} />;
    case 'text':
      return <TextControl field={field} {...props} />;
    case 'plate':
      return <PlateControl field={field} {...props} />;
    case 'colour': {
      const lab = labSchema.safeParse(props.value);
      return <ColourControl label={props.label} lab={lab.data ?? GREY} commit={props.commit} />;
    }
    default:
      return null;
  }
}
