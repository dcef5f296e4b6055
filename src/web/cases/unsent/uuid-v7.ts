const hex = (byte: number): string => byte.toString(16).padStart(2, "0");

/**
 * A UUID of version 7 in lower case (RFC 9562, 5.7, from memory): 48 bits of the moment, then random bits.
 * @param now milliseconds since 1970, as the clock of this device shows them
 * @param random ten bytes
 */
export const formatUuidV7 = (now: number, random: Uint8Array): string => {
  const time = Math.max(0, Math.floor(now)).toString(16).padStart(12, "0").slice(-12);
  const [a = 0, b = 0, c = 0, d = 0, ...rest] = random;
  const version = hex(0x70 | (a & 0x0f)) + hex(b);
  const variant = hex(0x80 | (c & 0x3f)) + hex(d);
  return `${time.slice(0, 8)}-${time.slice(8)}-${version}-${variant}-${rest.slice(0, 6).map(hex).join("")}`;
};

/** A new id for a look made on this device now. */
export const makeLookId = (): string => formatUuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10)));
