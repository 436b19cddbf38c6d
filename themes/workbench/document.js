/* Units, paths and drawings that open large. A classic script at a page's end: the page is complete
   without it, and what is chosen is kept where the browser lets it. */
(() => {
  "use strict";

  const root = document.documentElement;
  const kept = {
    get: (name) => {
      try {
        return localStorage.getItem(`kerfolio-${name}`);
      } catch {
        return null;
      }
    },
    set: (name, value) => {
      try {
        localStorage.setItem(`kerfolio-${name}`, value);
      } catch {
        /* A browser that keeps nothing: it holds for this page. */
      }
    },
  };

  /* ------------------------------------------------------------------ one unit at a time */

  const units = document.querySelector(".units");
  if (units && document.querySelector(".both")) {
    const first = document.querySelector(".both > :first-child").className;
    const buttons = [...units.querySelectorAll("button")];
    const show = (unit) => {
      root.dataset.unit = unit;
      for (const each of buttons) each.setAttribute("aria-pressed", String(each.dataset.unit === unit));
    };
    for (const each of buttons) {
      each.addEventListener("click", () => {
        show(each.dataset.unit);
        kept.set("unit", each.dataset.unit);
      });
    }
    const wanted = kept.get("unit");
    show(buttons.some((each) => each.dataset.unit === wanted) ? wanted : first);
    units.hidden = false;
  }

  /* ------------------------------------------------------------------ the chosen path */

  const paths = [...document.querySelectorAll("[data-path]")];
  const ways = [...document.querySelectorAll("details[data-who]")];
  const open = (path) => {
    for (const each of ways) each.open = each.dataset.who.split(" ").includes(path);
  };
  for (const each of paths) {
    each.querySelector("summary").addEventListener("click", () => {
      const path = each.open ? "" : each.dataset.path;
      kept.set("path", path);
      open(path);
    });
  }
  const before = paths.find((each) => each.dataset.path === kept.get("path"));
  if (before) {
    before.open = true;
    open(before.dataset.path);
  }

  /* What an address leads to within something closed is opened, for browsers that do not. */
  const reveal = () => {
    const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!target) return;
    let closed = false;
    for (let each = target; each; each = each.parentElement) {
      if (each.tagName === "DETAILS" && !each.open) {
        each.open = true;
        closed = true;
      }
    }
    if (closed) target.scrollIntoView();
  };
  addEventListener("hashchange", reveal);
  reveal();

  /* ------------------------------------------------------------------ the list of chapters */

  const bar = document.querySelector(".chapter-list .bar");
  if (bar) {
    bar.addEventListener("click", (event) => {
      if (event.target.closest("a")) bar.open = false;
    });
    bar.addEventListener("keydown", (event) => {
      if (event.key === "Escape" && bar.open) {
        bar.open = false;
        bar.querySelector("summary").focus();
      }
    });
    const links = [...document.querySelectorAll(".chapter-list .side a")];
    const places = links.map((each) => document.getElementById(each.hash.slice(1)).closest(".chapter"));
    const here = () => {
      let at = -1;
      places.forEach((each, n) => {
        if (each.getBoundingClientRect().top < innerHeight / 3) at = n;
      });
      links.forEach((each, n) => {
        if (n === at) each.setAttribute("aria-current", "true");
        else each.removeAttribute("aria-current");
      });
    };
    let asked = false;
    addEventListener("scroll", () => {
      if (asked) return;
      asked = true;
      requestAnimationFrame(() => {
        asked = false;
        here();
      });
    }, { passive: true });
    here();
  }

  /* ------------------------------------------------------------------ the page's address, to send */

  const copy = document.querySelector(".copy");
  if (copy && navigator.clipboard) {
    const [press, told] = [copy.querySelector("button"), copy.querySelector("output")];
    press.addEventListener("click", async () => {
      try {
        await navigator.clipboard.writeText(press.dataset.copy);
        told.textContent = say("drawscript-copied");
      } catch {
        told.textContent = press.dataset.copy;
      }
    });
    copy.hidden = false;
  }

  /* ------------------------------------------------------------------ drawings that slide say so */

  const slides = [...document.querySelectorAll(".slide")];
  const told = () => {
    for (const each of slides) {
      const pan = each.querySelector(".pan");
      each.dataset.slides = pan.scrollWidth > pan.clientWidth + 1 ? "yes" : "no";
    }
  };
  if (slides.length && typeof ResizeObserver === "function") {
    const watch = new ResizeObserver(told);
    for (const each of slides) watch.observe(each);
  }

  /* ------------------------------------------------------------------ drawings, large */

  const button = (label, title, act) => {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = label;
    if (title) made.setAttribute("aria-label", title);
    made.addEventListener("click", act);
    return made;
  };

  const enlarge = (figure) => {
    const drawn = figure.querySelector("svg");
    const copy = drawn.cloneNode(true);
    for (const each of [copy, ...copy.querySelectorAll("[id]")]) each.removeAttribute("id");
    const [, , width, height] = drawn.getAttribute("viewBox").split(/\s+/).map(Number);
    const dialog = document.createElement("dialog");
    dialog.className = "large";
    const name = drawn.getAttribute("aria-label") || say("drawscript-drawing");
    dialog.setAttribute("aria-label", name);
    const stage = document.createElement("div");
    stage.className = "large-stage";
    stage.tabIndex = 0;
    stage.setAttribute("role", "group");
    stage.setAttribute("aria-label", say("drawscript-keys", { name }));
    stage.append(copy);
    const bars = document.createElement("div");
    bars.className = "large-buttons";
    let scale = 1;
    const whole = () => Math.min(stage.clientWidth / width, stage.clientHeight / height);
    const size = (wanted) => {
      const before = scale;
      scale = Math.min(Math.max(wanted, 1), 12);
      const across = stage.scrollLeft + stage.clientWidth / 2;
      const down = stage.scrollTop + stage.clientHeight / 2;
      copy.setAttribute("width", String(Math.floor(whole() * width * scale)));
      copy.setAttribute("height", String(Math.floor(whole() * height * scale)));
      stage.scrollTo({ left: (across * scale) / before - stage.clientWidth / 2, top: (down * scale) / before - stage.clientHeight / 2, behavior: "instant" });
    };
    bars.append(
      button("−", say("drawscript-smaller"), () => size(scale / 1.5)),
      button("+", say("drawscript-larger"), () => size(scale * 1.5)),
      button(say("drawscript-whole"), "", () => size(1)),
      button(say("drawscript-close"), "", () => dialog.close()),
    );
    stage.addEventListener("keydown", (event) => {
      if (event.key === "+" || event.key === "=") size(scale * 1.5);
      else if (event.key === "-") size(scale / 1.5);
      else if (event.key === "0") size(1);
      else return;
      event.preventDefault();
    });
    stage.addEventListener("wheel", (event) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      size(scale * (event.deltaY < 0 ? 1.2 : 1 / 1.2));
    }, { passive: false });
    drag(stage, copy, () => scale, size);
    dialog.append(bars, stage);
    const fit = () => size(scale);
    dialog.addEventListener("close", () => {
      removeEventListener("resize", fit);
      dialog.remove();
    });
    addEventListener("resize", fit);
    document.body.append(dialog);
    dialog.showModal();
    size(1);
    stage.focus();
  };

  /* One pointer moves the drawing, two change its size. A mouse has to drag; a finger scrolls by itself. */
  const drag = (stage, copy, scale, size) => {
    const held = new Map();
    let spread = 0;
    let began = 1;
    const apart = () => {
      const [a, b] = [...held.values()];
      return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
    };
    stage.addEventListener("pointerdown", (event) => {
      held.set(event.pointerId, event);
      if (held.size === 2) {
        spread = apart();
        began = scale();
      }
      if (event.pointerType === "mouse") stage.setPointerCapture(event.pointerId);
    });
    stage.addEventListener("pointermove", (event) => {
      const last = held.get(event.pointerId);
      if (!last) return;
      held.set(event.pointerId, event);
      if (held.size === 2) size((began * apart()) / spread);
      else {
        stage.scrollLeft -= event.clientX - last.clientX;
        stage.scrollTop -= event.clientY - last.clientY;
      }
    });
    for (const end of ["pointerup", "pointercancel"]) stage.addEventListener(end, (event) => held.delete(event.pointerId));
  };

  if (typeof HTMLDialogElement === "function") {
    for (const figure of document.querySelectorAll("figure.art")) {
      const opener = figure.querySelector(".enlarge");
      if (!opener) continue;
      opener.hidden = false;
      opener.addEventListener("click", () => enlarge(figure));
    }
  }
})();
