import { type OnePicture, onePicturePdf } from './one-picture.ts';

/**
 * A PDF of a proof at its printed size, for looking at: DeviceRGB, which viewers take for sRGB.
 *
 * @param proof.data `width * height * 3` bytes, sRGB
 */
export function proofPdf(
  proof: Pick<OnePicture, 'width' | 'height' | 'ppi' | 'title' | 'data'>,
): Promise<Uint8Array<ArrayBuffer>> {
  return onePicturePdf({ ...proof, components: 3, colourSpace: '/DeviceRGB' });
}
