import { quantityForms, type StoredLook, signWords } from "#casework";
import { cellText } from "../readings/reading-cells.ts";
import type { Looks } from "./use-looks.ts";

const attachedWords = (isPhoto: boolean, isNote: boolean): string =>
  isPhoto ? (isNote ? "photo and note" : "photo") : "note";

/** A look in a few words. */
export const lookWords = ({ content, photo, note }: StoredLook): string => {
  switch (content.kind) {
    case "signs":
      return content.signs.map((sign) => signWords[sign]).join(", ");
    case "nothing-seen":
      return "nothing seen";
    case "reading": {
      const { label, unit } = quantityForms[content.quantity];
      return `${label.toLowerCase()}${content.point === null ? "" : `, ${content.point}`}: ${cellText(content)} ${unit}`;
    }
    case "not-taken":
      return content.quantity === null
        ? attachedWords(photo !== null, note !== null)
        : `${quantityForms[content.quantity].label.toLowerCase()} not taken`;
    case "withdrawn":
      return "taken back";
  }
};

const MOST_SHOWN = 6;

/** What is on record here, the last first; each record can be taken back, which is a record too. */
export const PlaceRecords = ({ looks, place }: { readonly looks: Looks; readonly place: string }) => {
  const here = looks.looksAt(place)?.looks ?? [];
  if (here.length === 0) return null;
  const shown = here.toReversed().slice(0, MOST_SHOWN);
  return (
    <section className="place-records">
      <h3 className="margin-title">On record</h3>
      <ul>
        {shown.map((look) => (
          <li key={look.id}>
            <span>
              {lookWords(look)}
              {look.note === null ? null : <span className="label"> “{look.note}”</span>}
              <span className="note">
                {[look.who, look.at.slice(11, 16), look.loadState, look.clockOff ? "time not sure" : null]
                  .filter((part) => part !== null)
                  .join(", ")}
              </span>
            </span>
            <button type="button" className="link" onClick={() => looks.takeBack([look])}>
              Take back<span className="unseen">: {lookWords(look)}</span>
            </button>
          </li>
        ))}
      </ul>
      {here.length > MOST_SHOWN ? <p className="note">and {here.length - MOST_SHOWN} earlier</p> : null}
    </section>
  );
};
