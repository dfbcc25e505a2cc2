/** Each name once, where it is first: two things of the kit may have the same one, as a medium dry and wet. */
export const once = (names: string[]): string[] => [...new Set(names)];
