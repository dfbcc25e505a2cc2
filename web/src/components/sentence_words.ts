// A sentence of the program as plain text.

import type { Sentence } from "../wire/api";
import { shortDigests } from "./digest_words";

export const textOf = ({ words }: Sentence): string => words.map(({ text }) => text).join("");

/** "98 %" and "5.9 m" are never parted at the end of a line; a digest is no longer than it is read. */
export const unparted = (text: string): string =>
  shortDigests(text).replaceAll(/(\d) (?=(?:%|m|mm|cm|µm|gf|N)(?!\p{L}))/gu, "$1\u00a0");
