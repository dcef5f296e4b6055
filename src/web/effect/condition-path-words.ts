/** What the page calls the parts of a question that a finding names by path. */
const WORDS: Readonly<Record<string, string>> = {
  "condition.contactRise": "Travel",
  "condition.contact_rise_mm": "Travel",
  "condition.rack": "Rack",
  "condition.rack_mm": "Rack",
  "condition.braking": "Braking",
  "condition.braking_n": "Braking",
  "condition.lateral": "Side force",
  "condition.lateral_n": "Side force",
  "condition.drive": "Drive",
  "condition.drive_n": "Drive",
  "fault.play": "Play",
  "fault.factor": "Firmer by",
  "fault.hardness.from": "Hardness of the old part",
  "fault.hardness.to": "Hardness of the new part",
  "fault.grade": "Torn grade",
  "fault.kind": "Looked at as",
  position: "Place",
  corner: "Corner",
};

/** A finding's place in the words of the page; null where it has none. */
export const conditionPathWords = (path: string): string | null => WORDS[path] ?? null;
