import type { Colour, Stroke } from "../scene.ts";
import { strokes } from "../tokens.ts";

/** How a part is drawn: line weight and colour say what is known of it, hatching that nobody has looked. */
export interface Look {
  readonly weight: number;
  readonly colour: Colour;
  readonly unseen: boolean;
}

export const soundLook: Look = { weight: strokes.sound, colour: "ink", unseen: false };
/** A part farther from the eye than what matters here. */
export const farLook: Look = { weight: strokes.far, colour: "ink2", unseen: false };

export const strokeOf = (look: Look): Stroke => ({ colour: look.colour, width: look.weight });
export const hairline: Stroke = { colour: "hair", width: strokes.sound };
export const thinLine: Stroke = { colour: "ink3", width: strokes.sound };
export const inkLine: Stroke = { colour: "ink", width: strokes.sound };
