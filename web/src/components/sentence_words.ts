// A sentence of the program as plain text.

import type { Sentence } from "../wire/api";

export const textOf = ({ words }: Sentence): string => words.map(({ text }) => text).join("");

/** "98 %" and "5.9 m" are never parted at the end of a line. */
export const unparted = (text: string): string =>
  text.replaceAll(/(\d) (?=(?:%|m|mm|cm|µm|gf|N)(?!\p{L}))/gu, "$1\u00a0");
