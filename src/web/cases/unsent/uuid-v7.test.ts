import { expect, test } from "vitest";
import { formatUuidV7 } from "./uuid-v7.ts";

test("begins with the moment and carries version and variant whatever the random bytes are", () => {
  for (const byte of [0, 0x55, 0xff]) {
    const id = formatUuidV7(0x01890a5dac96, new Uint8Array(10).fill(byte));
    expect(id).toMatch(/^01890a5d-ac96-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  }
});

test("a later moment sorts later", () => {
  const random = new Uint8Array(10).fill(9);
  expect(formatUuidV7(1_700_000_000_001, random) > formatUuidV7(1_700_000_000_000, random)).toBe(true);
});
