/** When something is felt, as far as an owner's words say it. */
export interface SaidWhen {
  readonly speed: boolean;
  readonly braking: boolean;
  readonly steering: boolean;
  readonly temperature: boolean;
}

/** Least figure that is taken for a speed; smaller ones count things. */
const LEAST_SPEED = 30;
const MOST_SPEED = 300;

const saysSpeed = (text: string): boolean =>
  /\b(speed|motorway|highway|km\/?h|kph|mph)/.test(text) ||
  [
    ...text.matchAll(
      /\b(?:at|around|about|above|over|from|to|near|between)\s+(\d{2,3})\b(?!\s*(?:k|km|miles|bar|psi|mm)\b)/g,
    ),
  ].some(([, figure]) => Number(figure) >= LEAST_SPEED && Number(figure) <= MOST_SPEED);

/** What an owner's words say of when it is felt: "the wheel shakes at 110" says a speed, and nothing of braking. */
export const readSaidWhen = (words: string): SaidWhen => {
  const text = words.toLowerCase();
  return {
    speed: saysSpeed(text),
    braking: /\b(brak|breaks?\b|breaking|pedal|stopp)/.test(text),
    steering: /\b(turn|corner|bend|lock|steer|roundabout)/.test(text),
    temperature: /\b(cold|warm|hot|morning|frost)/.test(text),
  };
};

export const CONDITIONS = ["braking", "steering", "temperature", "load", "speed"] as const;
export type ConditionName = (typeof CONDITIONS)[number];

/**
 * The order in which the conditions of a complaint are asked for: what was said first; beside a speed comes what tells a
 * wheel from a brake, steering and braking.
 */
export const orderConditions = (said: SaidWhen): readonly ConditionName[] => {
  const first: readonly ConditionName[] = [
    ...(said.speed ? (["speed", "steering", "braking"] as const) : []),
    ...(said.braking ? (["braking", "speed"] as const) : []),
    ...(said.steering ? (["steering", "speed"] as const) : []),
    ...(said.temperature ? (["temperature"] as const) : []),
  ];
  return [...new Set([...first, ...CONDITIONS])];
};
