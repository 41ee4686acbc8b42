// No Python: the floor.
self.postMessage((5 * 60) / 53.5);
