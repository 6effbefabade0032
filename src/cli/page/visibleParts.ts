/** Parts of the page that can be seen are kept up to date; the others catch up when they come into sight. */

export interface VisibleParts {
  /** Something moved: what is in sight is drawn again, the rest when it comes. */
  readonly redraw: () => void;
  /** All of them, seen or not. */
  readonly drawAll: () => void;
}

/** How far outside of the window a part counts as in sight. */
const AHEAD = "40px";

/** `name` is that of the parts' data attribute, which holds the camera's index. */
export function watchVisible(name: string, draw: (index: number) => void): VisibleParts {
  const inSight = new Set<number>();
  const stale = new Set<number>();
  const parts = [...document.querySelectorAll(`[data-${name}]`)];
  const indices = new Map(parts.map((part) => [part, Number(part.getAttribute(`data-${name}`))]));
  const observer = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        const index = indices.get(target)!;
        if (!isIntersecting) inSight.delete(index);
        else {
          inSight.add(index);
          if (stale.delete(index)) draw(index);
        }
      }
    },
    { rootMargin: AHEAD },
  );
  for (const [part, index] of indices) {
    // What the page has no room for is drawn when it is first seen.
    stale.add(index);
    observer.observe(part);
  }
  return {
    redraw: () => {
      for (const index of indices.values()) {
        if (inSight.has(index)) draw(index);
        else stale.add(index);
      }
    },
    drawAll: () => {
      for (const index of indices.values()) draw(index);
    },
  };
}
