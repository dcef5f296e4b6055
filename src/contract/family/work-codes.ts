/** Every code the work of a family sheet can be refused with, beside those of the schema itself, and what it means. */
export const workCodes = {
  "duplicate-work-id": "Two entries of one list of the work have one id.",
  "unknown-access": "An operation needs an access that is not listed.",
  "unknown-operation": "A remedy needs an operation that is not listed.",
  "unknown-part": "A remedy or a set names a part that is not listed.",
  "unknown-place": "A limit or a remedy names a place or a kind of place this family does not have.",
  "limit-without-end": "A limit has neither a lower nor an upper end.",
  "range-not-rising": "The low end of a limit or target does not lie below its high end.",
  "torque-implausible": "A torque no fastener of a chassis has.",
  "angle-implausible": "An angle no fastener is turned by.",
  "angle-without-torque": "The first stage of a fastener is an angle, which begins from nothing.",
  "set-without-contents": "A set lists nothing that is in it.",
  "contents-without-set": "Something that is no set lists contents.",
  "set-in-itself": "A set contains itself, directly or through other sets.",
  "duplicate-target": "Two targets of alignment are given for one axle.",
} as const;
