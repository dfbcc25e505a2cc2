// The app begins here: the key is taken from the address, then the pages are shown.

import { mount } from "svelte";
import { takeKey } from "../api/key";
import App from "./App.svelte";
import { place } from "./place.svelte";
import "./app.css";

takeKey(location, history, localStorage);
place.begin();
const target = document.getElementById("app");
if (target) mount(App, { target });
