// What a scale does, as words for whoever stands at the bench.

import type { Scale } from "../wire/api";

export function scaleWords(state: NonNullable<Scale["state"]>): string {
  switch (state.connection) {
    case "cannot_open":
      return state.why ?? "The scale cannot be opened.";
    case "unplugged":
      return "The scale is unplugged. Type what it shows, or plug it in again.";
    case "silent":
      return "The scale says nothing: is it on, and set to send by itself?";
    case "listening":
      return "Listening to the scale …";
    case "hearing":
      break;
  }
  if (state.not_read) return state.not_read;
  if (state.shows?.is_overload) return "The scale is overloaded.";
  return state.shows?.words ?? "Listening to the scale …";
}
