import { render } from "preact";

import { App } from "./screens/App";
import { start } from "./state";
import "./styles/index.css";

void start();
const root = document.getElementById("app");
if (root) render(<App />, root);
