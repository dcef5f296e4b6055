/** How far from the edge of what is in view a selected place is brought, px. */
const INSIDE = 24;

/** Brings an element into view by moving what scrolls around it; unlike scrollIntoView the order of Tab stays as it is. */
export const bringIntoView = (element: Element, frame: HTMLElement): void => {
  let scroller: HTMLElement | null = frame;
  while (scroller !== null && scroller.scrollHeight <= scroller.clientHeight) scroller = scroller.parentElement;
  if (scroller === null) return;
  const [own, view] = [element.getBoundingClientRect(), scroller.getBoundingClientRect()];
  if (own.bottom > view.bottom) scroller.scrollTop += own.bottom - view.bottom + INSIDE;
  else if (own.top < view.top) scroller.scrollTop += own.top - view.top - INSIDE;
};
