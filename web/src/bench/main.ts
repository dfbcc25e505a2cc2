// The bench begins here: its storage is opened, then the page is shown.

import { mount } from "svelte";
import * as api from "../api/endpoints";
import { takeKey } from "../api/key";
import { meant } from "../api/send";
import Bench from "./Bench.svelte";
import { Taps } from "./taps";
import "./bench.css";

const lastNotebook = "keenfall.bench.notebook";

takeKey(location, history, localStorage);
// Where nobody answers, what is tapped is of the notebook that was open last.
meant.notebook = localStorage.getItem(lastNotebook) ?? undefined;
try {
  const { notebook } = await api.app();
  meant.notebook = notebook?.id;
  if (notebook?.id) localStorage.setItem(lastNotebook, notebook.id);
} catch {
  // The page says that nobody answers.
}
const target = document.getElementById("bench");
if (target) mount(Bench, { target, props: { taps: await Taps.open() } });
