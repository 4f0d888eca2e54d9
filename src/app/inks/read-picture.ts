import type { Client } from '../../../workers/client.ts';
import type { Lab, Stock } from '../../graph/inks.ts';
import type { FormLayout } from '../../ink/form/layout.ts';
import { pageToPicture } from '../../ink/form/page-place.ts';
import type { FormReadings } from '../../ink/form/read-form.ts';
import { labFromPhoto } from '../../ink/from-photo.ts';

interface FormPicture {
  /** Hash of the picture. */
  asset: string;
  /** Height over width of the picture. */
  shape: number;
  /** The form's corner marks, as shares of the picture's width and height. */
  corners: readonly (readonly [number, number])[];
  form: FormLayout;
  paper: Stock;
}

/** Share of a patch that is read, so that its edges are not. */
const INNER = 0.3;

/** Lab of every patch of a form in a photo or scan of it. @throws when corners or paper cannot be */
export async function readPicture(client: Client, picture: FormPicture): Promise<FormReadings> {
  const { asset, shape, corners, form, paper } = picture;
  const place = pageToPicture(form.corners, corners);
  const spots = form.patches.map(({ x, y, width, height }) => {
    const [left, top] = place([x, y]);
    const [right, bottom] = place([x + width, y + height]);
    const radius = INNER * Math.min(Math.abs(right - left), Math.abs(bottom - top) * shape);
    const [middleX, middleY] = place([x + width / 2, y + height / 2]);
    return { x: middleX, y: middleY, radius };
  });
  const colours = await client.run('spots', { asset, spots });
  const white = colours[form.patches.findIndex(({ id }) => id === 'paper')]!;
  const labs = colours.map((rgb) => labFromPhoto(rgb, white, paper.lab).map(tenths) as Lab);
  return Object.fromEntries(form.patches.map(({ id }, i) => [id, labs[i]!]));
}

const tenths = (value: number) => Math.round(value * 10) / 10 + 0;
