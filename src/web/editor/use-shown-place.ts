import { type RefObject, useEffect, useRef } from "react";
import { bringIntoView } from "../scene/bring-into-view.ts";
import { isAtOrIn } from "./model/sheet-path.ts";

/** The element that stands for a place of the sheet, or for the nearest it lies in. */
const elementAt = (fields: HTMLElement, at: string): HTMLElement | null => {
  const around = [...fields.querySelectorAll<HTMLElement>("[data-place]")].filter(({ dataset }) =>
    isAtOrIn(at, dataset.place ?? ""),
  );
  return around.toSorted((a, b) => (b.dataset.place ?? "").length - (a.dataset.place ?? "").length)[0] ?? null;
};

/**
 * Brings the field of a place into view once it is asked for and drawn; at first that of the address.
 * @returns asks for a place; `focus` puts the next key into it, which a tap on the drawing does not want
 */
export const useShownPlace = (
  fields: RefObject<HTMLElement | null>,
  at: string | null,
): ((place: string, focus: boolean) => void) => {
  const wanted = useRef<{ readonly place: string; readonly focus: boolean } | null>(
    at === null ? null : { place: at, focus: false },
  );
  useEffect(() => {
    const asked = wanted.current;
    if (asked === null || asked.place !== at || fields.current === null) return;
    const element = elementAt(fields.current, asked.place);
    if (element === null) return;
    wanted.current = null;
    bringIntoView(element, element);
    if (asked.focus) element.querySelector<HTMLElement>("input, select, textarea, button")?.focus();
  });
  return (place, focus) => {
    wanted.current = { place, focus };
  };
};
