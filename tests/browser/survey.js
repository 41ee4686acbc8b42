// What the survey asks of a page beside axe. Each function returns lines, one for each finding.
globalThis.survey = (() => {
  const SLACK = 1; // px, for what a browser rounds
  const LEAST = 24; // px, WCAG 2.5.8
  const SEEN = 3; // contrast of what carries meaning, WCAG 1.4.11
  const READ = 4.5; // contrast of letters
  const CONTROLS = "button, summary, select, input:not([type=hidden]), textarea, [role=button]";
  const STOPS = `a[href], ${CONTROLS}, [tabindex="0"]`;
  const SHAPES = "line, polyline, polygon, path, rect, circle, ellipse, use, text";
  const UNITS = "select[aria-label^='Unit of']"; // other options are read whole in the open list
  const REPEATED = ".md-header__title"; // the header says the page's heading again, shortened
  const STANDING = ".md-header, .md-search, .calc-return, .offline-offer, .md-skip, .md-nav__title";

  function name(element) {
    const id = element.id ? `#${element.id}` : "";
    const kind = (element.getAttribute("class") ?? "").split(" ")[0];
    const said = element.textContent.trim().replace(/\s+/g, " ").slice(0, 50);
    return `${element.localName}${id}${kind && `.${kind}`} “${said}”`;
  }

  function isShown(element) {
    const { left, right, width, height } = element.getBoundingClientRect();
    if (right <= 0 || left >= document.documentElement.scrollWidth) return false; // a shut drawer
    const seen = element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    return seen && width > 1 && height > 1;
  }

  function shown(selector, within = document) {
    return [...within.querySelectorAll(selector)].filter(isShown);
  }

  function lookOf(element) {
    return getComputedStyle(element);
  }

  /** The part of the page in which an element can be seen: what scrolls or hides around it cuts. */
  function frameOf(element, known) {
    if (!element) return { left: -1e9, top: -1e9, right: 1e9, bottom: 1e9 };
    if (known.has(element)) return known.get(element);
    const around = frameOf(element.parentElement, known);
    const { overflowX, overflowY } = lookOf(element);
    let frame = around;
    if (overflowX !== "visible" && element !== document.body && element !== document.documentElement) {
      const own = element.getBoundingClientRect();
      frame = meet(around, own, overflowY !== "visible");
    }
    known.set(element, frame);
    return frame;
  }

  function meet(one, other, both = true) {
    const left = Math.max(one.left, other.left);
    const right = Math.min(one.right, other.right);
    if (!both) return { left, right, top: one.top, bottom: one.bottom };
    return { left, right, top: Math.max(one.top, other.top), bottom: Math.min(one.bottom, other.bottom) };
  }

  function pieces() {
    const known = new Map();
    const found = [];
    const range = document.createRange();
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const holder = walk.currentNode.parentElement;
      if (!walk.currentNode.data.trim() || !isShown(holder)) continue;
      if (holder.closest(`svg, math, option, ${STANDING}`)) continue;
      range.selectNodeContents(walk.currentNode);
      const frame = frameOf(holder, known);
      for (const rect of range.getClientRects()) {
        const at = meet(rect, frame);
        if (at.right - at.left > 2 && at.bottom - at.top > 2) found.push({ holder, at });
      }
    }
    return found.sort((a, b) => a.at.top - b.at.top);
  }

  function lies(one, other) {
    const both = meet(one, other);
    const least = Math.min(one.bottom - one.top, other.bottom - other.top);
    return both.right - both.left > 2 && both.bottom - both.top > 0.4 * least;
  }

  /** Lines of text that lie over others. */
  function overlaps() {
    const lines = pieces();
    const found = new Set();
    lines.forEach(({ holder, at }, place) => {
      for (let next = place + 1; next < lines.length && lines[next].at.top < at.bottom; next++) {
        const other = lines[next];
        if (other.holder !== holder && lies(at, other.at)) {
          found.add(`${name(holder)} lies over ${name(other.holder)}`);
        }
      }
    });
    return [...found];
  }

  function cuts(element) {
    const { overflowX, overflowY, textOverflow } = lookOf(element);
    const hides = (how) => how === "hidden" || how === "clip";
    const wide = element.scrollWidth > element.clientWidth + SLACK;
    const tall = element.scrollHeight > element.clientHeight + SLACK;
    return (wide && (hides(overflowX) || textOverflow === "ellipsis")) || (tall && hides(overflowY));
  }

  /** Text that does not fit where it stands and cannot be scrolled to. */
  function cut() {
    const found = shown("body *")
      .filter((each) => !each.closest(`svg, math, [aria-hidden=true], ${REPEATED}`) && each.clientWidth > 1)
      .filter((each) => each.textContent.trim() && lookOf(each).display !== "inline" && cuts(each));
    const boxes = shown("input[type=text]").filter((each) => each.scrollWidth > each.clientWidth + SLACK);
    const labels = shown("button, summary").filter(spills);
    return [...new Set([...found, ...boxes, ...labels, ...shown(UNITS).filter(isNarrow)])].map(name);
  }

  /** Whether the words on a control reach over its edge. */
  function spills(control) {
    const range = document.createRange();
    range.selectNodeContents(control);
    const [words, edge] = [range, control].map((each) => each.getBoundingClientRect());
    const over = [words.right - edge.right, edge.left - words.left, words.bottom - edge.bottom];
    return Math.max(...over) > SLACK;
  }

  /** Whether what a list shows as chosen is wider than its box. */
  function isNarrow(select) {
    const { font, paddingLeft, paddingRight } = lookOf(select);
    const pen = new OffscreenCanvas(1, 1).getContext("2d");
    pen.font = font;
    const room = select.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight);
    const text = select.selectedOptions[0]?.text ?? "";
    return pen.measureText(text).width > room + SLACK;
  }

  /** What makes the page wider than the screen. */
  function sideways() {
    const wide = document.documentElement.scrollWidth;
    const screen = document.documentElement.clientWidth;
    if (wide <= screen) return [];
    const known = new Map();
    const sticks = shown("body *").filter((each) => {
      const at = meet(each.getBoundingClientRect(), frameOf(each.parentElement, known));
      return at.right > screen + SLACK;
    });
    const inner = sticks.filter((each) => !sticks.some((other) => other !== each && each.contains(other)));
    return [`${wide} px on a screen of ${screen}: ${inner.slice(0, 3).map(name).join(", ")}`];
  }

  /** Controls smaller than a finger needs. A radio's label is part of it. */
  function small() {
    return shown(CONTROLS).flatMap((control) => {
      const target = control.closest("label") ?? control;
      const { width, height } = target.getBoundingClientRect();
      if (width >= LEAST && height >= LEAST) return [];
      return `${Math.round(width)} × ${Math.round(height)} px: ${name(target)}`;
    });
  }

  /** Stops of the Tab key without a ring. The page must have heard a key before. */
  function ringless() {
    const before = document.activeElement;
    const stops = shown(STOPS).filter((each) => !each.disabled && each.tabIndex >= 0);
    const found = stops.filter((stop) => {
      stop.focus({ preventScroll: true });
      return document.activeElement === stop && !ringed(stop);
    });
    before?.focus();
    return found.map(name);
  }

  /** What bears the ring of an element that has the focus: itself, or what is shown in its place. */
  function ringed(element) {
    const near = [element, element.closest("label"), element.parentElement, element.nextElementSibling];
    return near.find((each) => {
      if (!each || !isShown(each)) return false;
      const { outlineStyle, outlineWidth, outlineColor } = lookOf(each);
      return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2 && parts(outlineColor)[3] > 0;
    });
  }

  /** What has the focus, and what is wrong with how it is seen; null if nothing has it. */
  function stop() {
    const at = document.activeElement;
    if (!at || at === document.body) return null;
    const ring = ringed(at);
    const fault = ring ? (isCovered(ring) ? "is covered" : "") : "has no ring";
    return { name: name(at), fault };
  }

  function isCovered(element) {
    const { left, top, right, bottom } = element.getBoundingClientRect();
    const [width, height] = [right - left, bottom - top];
    return ![0.02, 0.25, 0.5, 0.75, 0.98].some((share) => {
      const seen = document.elementFromPoint(left + share * width, top + share * height);
      return seen && (element.contains(seen) || seen.contains(element));
    });
  }

  function parts(color) {
    const pen = new OffscreenCanvas(1, 1).getContext("2d");
    pen.fillStyle = color;
    pen.fillRect(0, 0, 1, 1);
    return [...pen.getImageData(0, 0, 1, 1).data];
  }

  function light(color) {
    const [red, green, blue] = parts(color).slice(0, 3).map((part) => {
      const share = part / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }

  function contrast(one, other) {
    const [dark, bright] = [light(one), light(other)].sort((a, b) => a - b);
    return (bright + 0.05) / (dark + 0.05);
  }

  function ground() {
    const probe = document.createElement("p");
    document.body.append(probe);
    probe.style.backgroundColor = "Canvas";
    const color = lookOf(probe).backgroundColor;
    probe.remove();
    return color;
  }

  /** In forced colors: parts of pictures that the ground swallows, buttons without edge or words. */
  function swallowed() {
    const below = ground();
    const pictures = shown("article svg").flatMap((svg) => {
      const drawn = [...svg.querySelectorAll(SHAPES)].filter((each) => each.checkVisibility({ visibilityProperty: true }));
      const lost = drawn.filter((shape) => isLost(shape, below));
      if (!lost.length) return [];
      const which = [...new Set(lost.map((each) => each.getAttribute("class") ?? each.localName))];
      return `${name(svg)}: ${lost.length} parts cannot be seen, ${which.slice(0, 4).join(", ")}`;
    });
    const buttons = shown("article button").flatMap((each) => {
      const { backgroundColor, borderTopWidth, borderTopStyle, color } = lookOf(each);
      const isEdged = borderTopStyle !== "none" && parseFloat(borderTopWidth) >= 1;
      const isRead = each.disabled || contrast(color, backgroundColor) >= READ;
      return [isEdged ? [] : `no edge: ${name(each)}`, isRead ? [] : `cannot be read: ${name(each)}`];
    });
    return [...pictures, ...buttons.flat()];
  }

  function isLost(shape, below) {
    const { fill, stroke, strokeWidth } = lookOf(shape);
    const isText = shape.localName === "text";
    if (shape.matches(".chart-grid")) return false; // the axis beside it says the same
    if (shape.closest(".calc-code")) return false; // keeps its own colors, for a camera
    const paints = shape.localName === "line" ? [] : [fill];
    if (!isText && parseFloat(strokeWidth) > 0) paints.push(stroke);
    const told = paints
      .filter((paint) => paint !== "none" && !paint.startsWith("url") && parts(paint)[3] > 0)
      .map((paint) => contrast(paint, below));
    const meant = told.filter((each) => each > 1.02); // the ground's own color covers on purpose
    return meant.length > 0 && Math.max(...meant) < (isText ? READ : SEEN);
  }

  /** Resolves when what moves has come to rest, or never will. */
  function settled() {
    const moves = document.getAnimations().map((each) => each.finished);
    const late = new Promise((settle) => setTimeout(settle, 1000));
    return Promise.race([Promise.allSettled(moves), late]).then(() => true);
  }

  /** What moves although nothing should. */
  function moving() {
    const running = document.getAnimations().filter(({ playState }) => playState === "running");
    const smooth = shown("body *").filter((each) => lookOf(each).scrollBehavior === "smooth");
    return [
      ...running.map(({ effect }) => `moves: ${name(effect.target)}`),
      ...smooth.map((each) => `scrolls smoothly: ${name(each)}`),
    ];
  }

  return { cut, moving, overlaps, ringless, settled, sideways, small, stop, swallowed };
})();
