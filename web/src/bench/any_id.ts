/** 32 hexadecimal digits that were never used before. Also where the page is not of a secure origin. */
export const anyId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
