export type * from "./scene.ts";
