import { createRoot } from "react-dom/client";
import { Page } from "./Page";
import "../pane/typeface.css";
import "./page.css";

createRoot(document.getElementById("page")!).render(<Page />);
