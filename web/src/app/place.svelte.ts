// Where the person is. Links within the app are followed without loading the page anew.

import { type Route, routeOf } from "./router";

class Place {
  route: Route = $state.raw({ page: "home" });
  /** How often the person went somewhere; 0: the page was just opened. */
  steps = $state(0);

  begin(): void {
    this.#look();
    window.addEventListener("popstate", () => this.#arrive());
    document.addEventListener("click", (event) => this.#follow(event));
  }

  go(path: string): void {
    history.pushState(null, "", path);
    this.#arrive();
    window.scrollTo(0, 0);
  }

  /** The same place by another address: going back does not lead through it. */
  instead(path: string): void {
    history.replaceState(null, "", path);
    this.#arrive();
  }

  #look(): void {
    this.route = routeOf(location.pathname, location.search);
  }

  #arrive(): void {
    this.steps += 1;
    this.#look();
  }

  #follow(event: MouseEvent): void {
    if (event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = event.target instanceof Element ? event.target.closest("a") : null;
    if (!link || link.target || link.hasAttribute("download")) return;
    if (link.origin !== location.origin || link.getAttribute("href")?.startsWith("#")) return;
    // The bench is a page of its own.
    if (link.pathname === "/bench") return;
    event.preventDefault();
    this.go(link.pathname + link.search);
  }
}

export const place = new Place();
