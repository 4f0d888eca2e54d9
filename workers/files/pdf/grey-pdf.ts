import { type OnePicture, onePicturePdf } from './one-picture.ts';

/**
 * A PDF of one plate in DeviceGray, solid black.
 *
 * @param plate.grey `width * height` bytes, 0 solid .. 255 paper
 */
export function greyPdf(
  plate: Pick<OnePicture, 'width' | 'height' | 'ppi' | 'title' | 'trim'> & { grey: Uint8Array },
): Promise<Uint8Array<ArrayBuffer>> {
  const { grey, ...page } = plate;
  return onePicturePdf({ ...page, data: grey, components: 1, colourSpace: '/DeviceGray' });
}
