/** Cards that can be seen are kept up to date; the others catch up when they come into sight. */

export interface VisibleCards {
  /** Something moved: what is in sight is drawn again, the rest when it comes. */
  readonly redraw: () => void;
}

/** How far outside of the window a card counts as in sight. */
const AHEAD = "300px";

export function watchVisible(draw: (index: number) => void): VisibleCards {
  const inSight = new Set<number>();
  const stale = new Set<number>();
  const indexOf = (card: Element): number => Number((card as HTMLElement).dataset["card"]);
  const observer = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        const index = indexOf(target);
        if (!isIntersecting) inSight.delete(index);
        else {
          inSight.add(index);
          if (stale.delete(index)) draw(index);
        }
      }
    },
    { rootMargin: AHEAD },
  );
  const cards = document.querySelectorAll("[data-card]");
  for (const card of cards) observer.observe(card);
  return {
    redraw: () => {
      for (const card of cards) {
        const index = indexOf(card);
        if (inSight.has(index)) draw(index);
        else stale.add(index);
      }
    },
  };
}
