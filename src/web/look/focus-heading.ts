/** What of a router this needs: it says when another page has been drawn. */
interface PageChanges {
  readonly subscribe: (
    event: "onRendered",
    told: (change: { readonly fromLocation?: unknown; readonly pathChanged: boolean }) => void,
  ) => () => void;
}

/** So long a page that was gone to may take until its heading stands there, milliseconds. */
const MOST_WAIT = 5000;

/** Puts the focus on the heading as soon as one stands there; what has the focus by then keeps it. */
const focusHeading = (until: number): void => {
  const { activeElement } = document;
  const heading = document.querySelector<HTMLElement>("h1");
  if (heading === null) {
    if (performance.now() < until) requestAnimationFrame(() => focusHeading(until));
  } else if (activeElement === null || activeElement === document.body) heading.focus({ preventScroll: true });
};

/**
 * Moves the focus to the heading of a page that was gone to, so that Tab goes on from its head and a reader says where one
 * is. The first page of a visit keeps the browser's own beginning; what a page has put the focus on itself keeps it.
 */
export const focusHeadings = (router: PageChanges): (() => void) =>
  router.subscribe("onRendered", ({ fromLocation, pathChanged }) => {
    if (fromLocation !== undefined && pathChanged) focusHeading(performance.now() + MOST_WAIT);
  });
