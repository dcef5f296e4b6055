/** How a piece of access is written where it is opened and where it is closed; the first that fits counts. */
const PAIRS: readonly (readonly [written: RegExp, opened: string, closed: string])[] = [
  [/ off and on\b/i, " off", " on"],
  [/ out and in\b/i, " out", " in"],
  [/ open, bled after\b/i, " open", " closed and bled"],
  [/ opened, bled and checked\b/i, " opened", " closed, bled and checked"],
  [/ freed from one joint\b/i, " freed from one joint", " back on its joint"],
  [/ hung aside\b/i, " hung aside", " back in its place"],
  [/ lowered\b/i, " lowered", " raised again"],
];

/** A piece of access as the step that opens it: "Wheel off" of "Wheel off and on". */
export function openedWords(label: string): string {
  const pair = PAIRS.find(([written]) => written.test(label));
  return pair === undefined ? label : label.replace(pair[0], pair[1]);
}

/** A piece of access as the step that closes it: "Undertray on" of "Undertray off and on". */
export function closedWords(label: string): string {
  const pair = PAIRS.find(([written]) => written.test(label));
  if (pair === undefined) return `${label}: back as it was`;
  const [before = ""] = label.split(pair[0]);
  return `${before}${pair[2]}`;
}

/** True for a cover that can stay off while the car stands on its wheels: what is under it may still need its torque. */
export const isCover = (label: string): boolean => !isWheelOff(label) && / off and on\b/i.test(label);

/** True for taking a wheel off: all wheels go on in one step, tightened in a star. */
export const isWheelOff = (label: string): boolean => /^(road )?wheels? off\b/i.test(label);
