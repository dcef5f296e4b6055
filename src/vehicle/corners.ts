export type AxleName = "front" | "rear";
export type Side = "left" | "right";
export type Corner = "front-left" | "front-right" | "rear-left" | "rear-right";
