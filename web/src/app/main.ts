// The app begins here: the key is taken from the address, then the pages are shown.

import { mount } from "svelte";
import { takeKey } from "../api/key";
import App from "./App.svelte";
import { place } from "./place.svelte";
import "./app.css";

takeKey(location, history, localStorage);
// The address given again in the same tab, now with its key, changes what stands behind "#" only.
addEventListener("hashchange", () => {
  if (takeKey(location, history, localStorage)) location.reload();
});
place.begin();
const target = document.getElementById("app");
if (target) mount(App, { target });
