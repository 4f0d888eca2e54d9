/** A closed circle and a square that runs off the frame: four regions on 20 x 20 mm. */
export const GOOD_SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20">
  <g fill="none" stroke="#000" stroke-width="0.5"><circle cx="8" cy="8" r="5"/><circle cx="8" cy="8" r="2"/><path d="M14 14h9v9h-9z"/></g>
</svg>`;

export function svgOf(width: string, body: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${width}" viewBox="0 0 10 10">${body}</svg>`;
}
