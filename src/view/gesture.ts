import type { Point } from './camera.ts';

/** A point under a hand, with how it is held there. */
export interface HandPoint extends Point {
  /** How far it presses, 0..1; absent where that is not told. */
  pressure?: number;
  /** How far a pen is laid over, degrees from upright. */
  tiltDeg?: number;
}

/** A pointer event, without the page: positions in px on the desk. */
export interface Touch {
  id: number;
  at: HandPoint;
  kind: 'mouse' | 'pen' | 'touch';
  /** Asked to pick up instead of tinting. */
  alt?: boolean;
  /** Asked to move the print: middle button, or the space bar is down. */
  moves?: boolean;
}

/** What gestures come to. */
export interface HandActions {
  tap(at: Point, alt: boolean): void;
  /** The finger rested on a place; false when that means nothing and it may still tap or drag. */
  hold(at: Point): boolean;
  /** A drag begins; false when it is to move the print. */
  strokeStart(at: HandPoint): boolean;
  strokeTo(from: HandPoint, to: HandPoint): void;
  strokeEnd(): void;
  /** A second finger came, or the pointer was taken away, before the stroke ended. */
  strokeDrop(): void;
  pan(by: Point): void;
  /** Two fingers spread or drew together about the point between them. */
  pinch(factor: number, about: Point): void;
  /** Something begins or ends to move. */
  moving(moves: boolean): void;
}

export interface Gestures {
  down(touch: Touch): void;
  move(touch: Touch): void;
  up(touch: Touch): void;
  /** Ends what is under way without a tap. */
  cancel(id: number): void;
}

type Doing = 'nothing' | 'pressing' | 'stroking' | 'panning' | 'pinching';

/** How long a finger rests to pick up, ms; how far it may tremble, px. */
const HOLD_MS = 500;
const TREMBLE_PX = { mouse: 4, pen: 6, touch: 9 };

/** Makes taps, holds, strokes, pans and pinches out of pointers that go down, move and go up. */
export function gestures(actions: HandActions): Gestures {
  const pointers = new Map<number, HandPoint>();
  let doing: Doing = 'nothing';
  let pressed: Touch | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const start = (next: Doing, ends: 'strokeEnd' | 'strokeDrop' = 'strokeDrop') => {
    clearTimeout(timer);
    if (doing === 'stroking') actions[ends]();
    const moved = doing !== 'nothing' && doing !== 'pressing';
    const moves = next !== 'nothing' && next !== 'pressing';
    doing = next;
    if (moves !== moved) actions.moving(moves);
  };

  const press = (touch: Touch) => {
    pressed = touch;
    start('pressing');
    if (touch.kind === 'mouse') return;
    timer = setTimeout(() => {
      if (actions.hold(touch.at)) start('nothing');
    }, HOLD_MS);
  };

  const drag = (from: Touch, to: HandPoint, tremble: number) => {
    if (Math.hypot(to.x - from.at.x, to.y - from.at.y) < tremble) return;
    if (from.alt || !actions.strokeStart(from.at)) {
      start('panning');
      actions.pan({ x: to.x - from.at.x, y: to.y - from.at.y });
      return;
    }
    start('stroking');
    actions.strokeTo(from.at, to);
  };

  const pinch = (before: readonly Point[], after: readonly Point[]) => {
    const [a, b] = [middle(before), middle(after)];
    actions.pan({ x: b.x - a.x, y: b.y - a.y });
    if (spread(before) > 0) actions.pinch(spread(after) / spread(before), b);
  };

  return {
    down(touch) {
      pointers.set(touch.id, touch.at);
      if (pointers.size === 2) start('pinching');
      else if (pointers.size === 1) touch.moves ? start('panning') : press(touch);
    },
    move({ id, at, kind }) {
      const from = pointers.get(id);
      if (!from) return;
      const before = [...pointers.values()];
      pointers.set(id, at);
      if (doing === 'pressing' && pressed) drag(pressed, at, TREMBLE_PX[kind]);
      else if (doing === 'stroking') actions.strokeTo(from, at);
      else if (doing === 'panning') actions.pan({ x: at.x - from.x, y: at.y - from.y });
      else if (doing === 'pinching') pinch(before.slice(0, 2), [...pointers.values()].slice(0, 2));
    },
    up({ id, at }) {
      if (!pointers.delete(id)) return;
      const tapped = doing === 'pressing' ? pressed : null;
      start(doing === 'pinching' && pointers.size === 1 ? 'panning' : 'nothing', 'strokeEnd');
      if (tapped) actions.tap(at, tapped.alt ?? false);
    },
    cancel(id) {
      if (pointers.delete(id)) start('nothing');
    },
  };
}

function middle([a, b]: readonly Point[]): Point {
  return { x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2 };
}

function spread([a, b]: readonly Point[]): number {
  return Math.hypot(a!.x - b!.x, a!.y - b!.y);
}
