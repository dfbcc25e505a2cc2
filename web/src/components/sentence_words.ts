// A sentence of the program as plain text.

import type { Sentence } from "../wire/api";

export const textOf = ({ words }: Sentence): string => words.map(({ text }) => text).join("");

/** "98 %" is never parted at the end of a line. */
export const unparted = (text: string): string => text.replaceAll(/(\d) %/g, "$1\u00a0%");
