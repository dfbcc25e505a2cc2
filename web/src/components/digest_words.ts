// A SHA-256 in words is 64 digits that nobody reads: its first ones tell it from others.

const shownDigits = 12;
const digests = /\b([0-9a-f]{64})\b/g;

export const shortDigests = (text: string): string =>
  text.replace(digests, (digest) => `${digest.slice(0, shownDigits)}…`);

/** The whole of the first one, where there is one. */
export const digestIn = (text: string): string | undefined => text.match(digests)?.[0];
