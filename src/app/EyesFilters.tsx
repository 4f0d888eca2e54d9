import { EYES, type Eyes, eyesMatrix } from '../ink/seen-as.ts';

const OTHERS = EYES.filter((eyes) => eyes !== 'usual');

/** The CSS filter that shows a part of the window as other eyes see it. */
export const eyesFilter = (eyes: Eyes): string => (eyes === 'usual' ? 'none' : `url(#eyes-${eyes})`);

/** Where the filters for `eyesFilter` are defined. */
export function EyesFilters() {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden="true">
      {OTHERS.map((eyes) => (
        <filter key={eyes} id={`eyes-${eyes}`} colorInterpolationFilters="linearRGB">
          <feColorMatrix type="matrix" values={eyesMatrix(eyes)} />
        </filter>
      ))}
    </svg>
  );
}
