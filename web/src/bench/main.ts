// The bench begins here: its storage is opened, then the page is shown.

import { mount } from "svelte";
import * as api from "../api/endpoints";
import { keepKey, takeCode, takeKey } from "../api/key";
import { meant, Refused } from "../api/send";
import type { BenchToCut } from "../wire/api";
import Bench from "./Bench.svelte";
import { Taps } from "./taps";
import "./bench.css";

const notLetIn = "not_let_in";

takeKey(location, history, localStorage);
const told = takeCode(location, history);
const taps = await Taps.open();
const key = await taps.remembered("key");
if (key !== undefined) keepKey(localStorage, key);
// Where nobody answers, what is tapped is of the notebook that was open last.
meant.notebook = await taps.remembered("notebook");
let start: BenchToCut | undefined;
let code: string | undefined;
let why: string | undefined;
try {
  start = await api.benchToCut();
  meant.notebook = start.notebook;
  if (start.notebook) await taps.remember("notebook", start.notebook);
} catch (failure) {
  // Where nobody answers the page says so.
  const isOutside =
    failure instanceof Refused && failure.problems.some((one) => one.kind === notLetIn);
  if (isOutside) code = told ?? "";
  else if (failure instanceof Refused) why = failure.message;
}
async function arrived(given: string): Promise<void> {
  await taps.remember("key", given);
  location.reload();
}
const target = document.getElementById("bench");
if (target) mount(Bench, { target, props: { taps, start, code, why, arrived } });
