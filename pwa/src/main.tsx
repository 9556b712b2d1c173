import { render } from "preact";

import { App } from "./screens/App";
import { firstTexts, start } from "./state";
import "./styles/index.css";

void start();
await firstTexts();
const root = document.getElementById("app");
if (root) render(<App />, root);
