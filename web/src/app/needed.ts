// How a label says that its field may not be left empty.

export const neededMark = " (needed)";
