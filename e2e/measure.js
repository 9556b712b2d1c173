// What is on the screen now, as plain facts: where the controls are, how large and how strong the lettering is.
// Measured on the topmost layer only: a ring covers a sheet, a sheet covers the screen.
() => {
  const layer = document.querySelector(".ring") ?? document.querySelector(".sheet") ?? document.querySelector("#app");
  const strip = document.querySelector(".ring-strip");
  const box = ({ left, top, right, bottom }) => ({ left, top, right, bottom });
  const shows = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !element.closest(".unseen");

  // Colours, as the browser computed them: [red, green, blue] of 0–255 and an alpha of 0–1.
  const brush = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
  const colour = (css) => {
    brush.clearRect(0, 0, 1, 1);
    brush.fillStyle = css;
    brush.fillRect(0, 0, 1, 1);
    const [red, green, blue, alpha] = brush.getImageData(0, 0, 1, 1).data;
    return [red, green, blue, alpha / 255];
  };
  const over = (top, under) => [0, 1, 2].map((i) => top[i] * top[3] + under[i] * (1 - top[3])).concat(1);
  const ground = (element) => {
    const coats = [];
    for (let at = element; at; at = at.parentElement) {
      const coat = colour(getComputedStyle(at).backgroundColor);
      if (coat[3] > 0) coats.push(coat);
      if (coat[3] === 1) break;
    }
    return coats.reverse().reduce((under, top) => over(top, under), [255, 255, 255, 1]);
  };
  // WCAG 2.2, relative luminance and contrast ratio.
  const luminance = (rgb) => {
    const [r, g, b] = rgb.slice(0, 3).map((value) => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a, b) => {
    const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (light + 0.05) / (dark + 0.05);
  };
  const faded = (element) => {
    let opacity = 1;
    for (let at = element; at; at = at.parentElement) opacity *= Number(getComputedStyle(at).opacity);
    return opacity;
  };
  const strength = (element) => {
    const style = getComputedStyle(element);
    const svg = element.closest("svg");
    const under = ground(svg ? svg.parentElement : element);
    const ink = colour(svg ? style.fill : style.color);
    ink[3] *= faded(element);
    return contrast(over(ink, under), under);
  };

  const letters = (root) => {
    const found = [];
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      if (root !== strip && strip?.contains(element)) continue;
      if (!node.data.trim() || !shows(element) || element.closest("option")) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      // A line's box is higher than what is inked in it: a fifth of it stands above the capitals, a fifth under the line.
      const inset = (low, high) => [low + (high - low) / 5, high - (high - low) / 5];
      const upright = element.closest("[transform*='rotate(-90)']") === null;
      const inked = (line) => {
        const [left, right] = upright ? [line.left, line.right] : inset(line.left, line.right);
        const [top, bottom] = upright ? inset(line.top, line.bottom) : [line.top, line.bottom];
        return { left, top, right, bottom };
      };
      const edge = getComputedStyle(element).overflowX === "hidden" ? element.getBoundingClientRect().right : Infinity;
      const rects = [...range.getClientRects()].filter((one) => one.width > 0 && one.height > 0).map(inked).map((one) => ({ ...one, right: Math.min(one.right, edge) }));
      if (rects.length === 0) continue;
      const control = element.closest("button, a[href]");
      // In a strip of clocks the time stands whole and the name may be shortened.
      if (element.matches(".clocks-strip .clock-name")) continue;
      const cut = element.closest(".clock-name, .number, .facts dd, .undo, .tool");
      found.push({
        text: node.data.trim().slice(0, 40),
        size: parseFloat(getComputedStyle(element).fontSize),
        contrast: strength(element),
        rects,
        control: control ? controls.indexOf(control) : -1,
        inFoot: element.closest(".sheet-foot") !== null,
        cut: cut !== null && cut.scrollWidth > cut.clientWidth + 1,
      });
    }
    return found;
  };

  const area = (root) => [...root.querySelectorAll("button, a[href], input, select, summary")].filter(shows);
  // A ringing strip lies over the button and hides what is under it.
  const covered = (rects) => strip !== null && rects.every((rect) => rect.top >= strip.getBoundingClientRect().top);
  const controls = area(layer).filter((element) => !covered([element.getBoundingClientRect()]));
  const reached = (element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    return hit !== null && element.contains(hit);
  };
  const kind = (element) =>
    element.matches(".act") ? "big" : element.matches(".key") ? "key" : element.matches(".picture-tap") ? "picture" : "other";
  const figures = [...layer.querySelectorAll(".number .digits b, .typed:not(.typed-word) .digits b")].filter(shows).map((element) => {
    const style = getComputedStyle(element);
    brush.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    return { text: element.textContent, size: parseFloat(style.fontSize), cap: brush.measureText("0").actualBoundingBoxAscent, rects: [box(element.getBoundingClientRect())] };
  });
  const scrolled = [...layer.querySelectorAll(".bench-mid, .bench-foot, main.bench")].filter((one) => one.scrollHeight > one.clientHeight + 1);
  const texts = letters(layer);
  return {
    layer: layer.matches(".ring") ? "ring" : layer.matches(".sheet") ? "sheet" : document.querySelector("main.bench") ? "bench" : "desk",
    keypad: layer.querySelector(".keys") !== null,
    caution: layer.querySelector(".caution") !== null,
    width: innerWidth,
    height: innerHeight,
    wide: document.scrollingElement.scrollWidth,
    hidden: scrolled.map((one) => ({ what: one.className, by: one.scrollHeight - one.clientHeight })),
    controls: controls.map((element) => ({
      name: (element.getAttribute("aria-label") ?? element.textContent ?? "").trim().slice(0, 40),
      kind: kind(element),
      reached: reached(element),
      inFoot: element.closest(".sheet-foot") !== null,
      ...box(element.getBoundingClientRect()),
    })),
    texts: strip ? [...texts.filter((one) => !covered(one.rects)), ...letters(strip)] : texts,
    figures,
  };
}
