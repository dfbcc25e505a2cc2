// Measures a page as it stands: what is too small to be hit, what is cut off, what lies on other words.

import type { Page } from "playwright-core";

/** A fingertip. */
const least = 48;

/** Everything that can be pressed or typed into and is smaller. Where a box is ticked, its words can be pressed, too. */
export function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((touch) => {
    const pressed = document.querySelectorAll("a[href], button, select, summary, input, textarea");
    const area = (element: Element) => {
      const labelled = element.matches("[type=checkbox], [type=radio]");
      return ((labelled && element.closest("label")) || element).getBoundingClientRect();
    };
    return [...pressed].flatMap((element) => {
      const { width, height } = area(element);
      const seen = width > 0 && element.checkVisibility() && !element.matches(".skip:not(:focus)");
      if (!seen || (width > touch - 0.5 && height > touch - 0.5)) return [];
      const size = `${width.toFixed(0)} by ${height.toFixed(0)}`;
      return [`too small, ${size}: ${element.outerHTML.slice(0, 120)}`];
    });
  }, least);
}

/** Whether the page has to be pushed sideways to be read. */
export async function sideways(page: Page): Promise<string[]> {
  const by = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  return by > 0 ? [`wider than its window by ${by}`] : [];
}

/**
 * Words that are cut off, stick out of what holds them or lie on other words; pictures aside, whose words
 * have a test of their own. What a change would undo may be shortened: the journal says it whole.
 */
export function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const free = "figure svg, .heard-only, .skip, #would-undo, option";
    const longestShown = 24;
    const faults: string[] = [];
    const lines: { rect: DOMRect; element: Element }[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const name = (element: Element) => (element.textContent ?? "").trim().slice(0, 60);
    const isSeen = (element: Element) =>
      !element.closest(free) && element.checkVisibility({ visibilityProperty: true });

    /** What of the line a person gets to see or can scroll to. */
    function look(element: Element, rect: DOMRect): string | undefined {
      for (let holds: Element | null = element; holds; holds = holds.parentElement) {
        const { overflowX, overflowY, display } = getComputedStyle(holds);
        if (display === "inline") continue;
        const box = holds.getBoundingClientRect();
        const out = rect.right > box.right + 1.5 || rect.left < box.left - 1.5;
        const below = rect.bottom > box.bottom + 2.5 || rect.top < box.top - 2.5;
        if (/auto|scroll/.test(overflowX) || /auto|scroll/.test(overflowY)) return undefined;
        if (/hidden|clip/.test(overflowX + overflowY) && (out || below)) return "cut off";
        if (holds.matches("button, a, summary, th, td") && (out || below)) return "sticks out";
      }
      return rect.right > innerWidth + 1 || rect.left < -1 ? "beyond the window" : undefined;
    }

    while (walker.nextNode()) {
      const text = walker.currentNode;
      const element = text.parentElement;
      if (!element || !text.textContent?.trim() || !isSeen(element)) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      for (const rect of range.getClientRects()) {
        const fault = rect.width > 1 ? look(element, rect) : undefined;
        if (fault) faults.push(`${fault}: ${name(element)}`);
        if (rect.width > 1) lines.push({ rect, element });
      }
    }
    for (const input of document.querySelectorAll("input:not([data-cell])")) {
      const typed = input as HTMLInputElement;
      // A name of many words is gone through with the caret, as in every field of one line.
      const short = typed.value !== "" && typed.value.length <= longestShown;
      if (isSeen(input) && short && typed.scrollWidth > typed.clientWidth + 1)
        faults.push(`cut off: ${typed.value}`);
    }

    const isStuck = (element: Element) =>
      [...document.querySelectorAll(".scrolled, .sheet")].some((holds) => holds.contains(element));
    const flowing = lines.filter(({ element }) => !isStuck(element));
    flowing.sort((one, other) => one.rect.top - other.rect.top);
    flowing.forEach(({ rect, element }, place) => {
      for (const other of flowing.slice(place + 1)) {
        if (other.rect.top >= rect.bottom - 3) break;
        const wide =
          Math.min(rect.right, other.rect.right) - Math.max(rect.left, other.rect.left) > 3;
        const deep = Math.min(rect.bottom, other.rect.bottom) - other.rect.top;
        if (wide && deep > 0.4 * Math.min(rect.height, other.rect.height))
          faults.push(`on other words: ${name(element)} / ${name(other.element)}`);
      }
    });
    return faults;
  });
}
