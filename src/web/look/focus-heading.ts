/** What of a router this needs: it says when another page has been drawn. */
interface PageChanges {
  readonly subscribe: (
    event: "onRendered",
    told: (change: { readonly fromLocation?: unknown; readonly pathChanged: boolean }) => void,
  ) => () => void;
}

/**
 * Moves the focus to the heading of a page that was gone to, so that Tab goes on from its head and a reader says where one
 * is. The first page of a visit keeps the browser's own beginning; what a page has put the focus on itself keeps it.
 */
export const focusHeadings = (router: PageChanges): (() => void) =>
  router.subscribe("onRendered", ({ fromLocation, pathChanged }) => {
    if (fromLocation === undefined || !pathChanged) return;
    const { activeElement } = document;
    if (activeElement !== null && activeElement !== document.body) return;
    document.querySelector<HTMLElement>("h1")?.focus({ preventScroll: true });
  });
