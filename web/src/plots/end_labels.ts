// Labels at the ends of lines, moved apart where lines end close to each other.

export interface EndLabel {
  text: string;
  y: number;
}

/** `labels` with y in pixels, each moved as little as puts `gap` between neighbours. */
export function movedApart(labels: EndLabel[], gap: number): EndLabel[] {
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  // Neighbours that are too close become one group around their mean; groups may then meet.
  const groups: { labels: EndLabel[]; middle: number }[] = [];
  for (const label of sorted) {
    let group = { labels: [label], middle: label.y };
    for (let before = groups.at(-1); before; before = groups.at(-1)) {
      const room = (gap * (before.labels.length + group.labels.length)) / 2;
      if (group.middle - before.middle >= room) break;
      groups.pop();
      const together = [...before.labels, ...group.labels];
      const middle = together.reduce((sum, { y }) => sum + y, 0) / together.length;
      group = { labels: together, middle };
    }
    groups.push(group);
  }
  return groups.flatMap(({ labels: together, middle }) =>
    together.map((label, place) => ({
      ...label,
      y: middle + gap * (place - (together.length - 1) / 2),
    })),
  );
}
