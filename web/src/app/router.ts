// Which page an address shows, and the address of each page. Addresses can be kept and returned to.

export type StepName = "ask" | "plan" | "enter" | "judge" | "tell";

export type Route =
  | { page: "home" | "start" | "kit" | "journal" | "devices" | "enter" | "unknown" }
  | { page: "search"; text: string }
  | { page: "trial"; trial: string; step: StepName };

const steps: readonly string[] = ["ask", "plan", "enter", "judge", "tell"];
const plain = ["start", "kit", "journal", "devices", "enter"] as const;

function decoded(part: string): string | undefined {
  try {
    return decodeURIComponent(part);
  } catch {
    return undefined;
  }
}

/** `path` begins with a stroke; `query` is empty or begins with a question mark. */
export function routeOf(path: string, query = ""): Route {
  const [first, second, third, ...more] = path.split("/").filter((part) => part !== "");
  if (more.length > 0) return { page: "unknown" };
  if (first === undefined) return { page: "home" };
  if (first === "trials" && second !== undefined) {
    const trial = decoded(second);
    const step = third ?? "judge";
    if (trial === undefined || !steps.includes(step)) return { page: "unknown" };
    return { page: "trial", trial, step: step as StepName };
  }
  if (second !== undefined) return { page: "unknown" };
  if (first === "search")
    return { page: "search", text: new URLSearchParams(query).get("text") ?? "" };
  const page = plain.find((name) => name === first);
  return page ? { page } : { page: "unknown" };
}

export function trialPath(trial: string, step: StepName): string {
  return `/trials/${encodeURIComponent(trial)}/${step}`;
}

/** A page of its own: readable from a step away, and with its own storage. */
export function benchPath(trial: string): string {
  return `/bench?${new URLSearchParams({ trial })}`;
}

export function searchPath(text: string): string {
  return `/search?${new URLSearchParams({ text })}`;
}
