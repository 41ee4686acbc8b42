// The smallest Python there is for a browser, with one line of arithmetic.
import { loadMicroPython } from "./micropython/micropython.mjs";

const python = await loadMicroPython();
python.runPython("flow = 5 * 60 / 53.5");
self.postMessage(python.globals.get("flow"));
