/* Shows a plan put together in 3-D: flat boards, parallel projection, inked edges.
   A classic script: it stands in the page, asks for nothing and runs from a disk too. It looks only
   inside the element it stands in. Lengths are mm; the world has x right, y back, z up. */
(() => {
  "use strict";

  const place = document.currentScript.parentElement;
  const opener = place.querySelector(".viewer-open");
  const closed = place.querySelector("template");
  opener.hidden = false;
  opener.querySelector("button").addEventListener("click", () => {
    opener.hidden = true;
    place.append(closed.content.cloneNode(true));
    open();
  });

  const find = (name) => place.querySelector(`[data-view="${name}"]`);

  function open() {
    const canvas = find("canvas");
    const gl = canvas.getContext("webgl", { antialias: true });
    if (!gl) {
      find("stage").remove();
      find("missing").hidden = false;
      find("missing").focus();
      return;
    }
    const model = read(JSON.parse(find("data").textContent));
    show(canvas, gl, model);
    canvas.focus({ preventScroll: true });
  }

  /* Puts away what was opened; the button to open it again gets the focus. */
  function close(gl) {
    gl.getExtension("WEBGL_lose_context")?.loseContext();
    while (closed.nextSibling) closed.nextSibling.remove();
    opener.hidden = false;
    opener.querySelector("button").focus();
  }

  /* ------------------------------------------------------------------ the model */

  function read(data) {
    const summed = (list, size) => {
      for (let i = size; i < list.length; i += 1) list[i] += list[i - size];
      return list;
    };
    const shapes = data.shapes.map((shape) => {
      const points = summed(shape.points, 3).map((each) => each / data.scale);
      return {
        tint: shape.tint,
        points,
        faces: faces(points, summed(shape.triangles, 3)),
        lines: lines(points, summed(shape.edges, 2)),
      };
    });
    const pieces = data.pieces.map((piece) => {
      const { points } = shapes[piece.shape];
      return { ...piece, box: box(points, piece.at), middle: middle(box(points, STILL)) };
    });
    const steps = data.steps.map(([number, title]) => ({ number, title }));
    return { shapes, pieces, steps, home: whole(pieces, 0), apart: whole(pieces, 1) };
  }

  /* Corner and normal of each corner of each triangle: boards are shaded flat. */
  function faces(points, triangles) {
    const made = [];
    for (let i = 0; i < triangles.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => points.slice(3 * triangles[i + k], 3 * triangles[i + k] + 3));
      const u = b.map((each, k) => each - a[k]);
      const v = c.map((each, k) => each - a[k]);
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      const size = Math.hypot(...n) || 1;
      for (const corner of [a, b, c]) made.push(...corner, ...n.map((each) => each / size));
    }
    return new Float32Array(made);
  }

  /* Both ends, and which end and side a corner is of: an edge is drawn as a thin upright strip. */
  function lines(points, edges) {
    const made = [];
    for (let i = 0; i < edges.length; i += 2) {
      const ends = [0, 1].flatMap((k) => points.slice(3 * edges[i + k], 3 * edges[i + k] + 3));
      for (const corner of [[0, -1], [1, -1], [1, 1], [0, -1], [1, 1], [0, 1]]) made.push(...ends, ...corner);
    }
    return new Float32Array(made);
  }

  const placed = (at, [x, y, z]) => [0, 1, 2].map((k) => at[k] * x + at[3 + k] * y + at[6 + k] * z + at[9 + k]);

  function span(points) {
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    for (const point of points) {
      for (let k = 0; k < 3; k += 1) {
        low[k] = Math.min(low[k], point[k]);
        high[k] = Math.max(high[k], point[k]);
      }
    }
    return [low, high];
  }

  function box(points, at) {
    const found = [];
    for (let i = 0; i < points.length; i += 3) found.push(placed(at, points.slice(i, i + 3)));
    return span(found);
  }

  const STILL = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];
  const across = ([low, high]) => low.map((each, k) => high[k] - each);
  const middle = ([low, high]) => low.map((each, k) => (each + high[k]) / 2);

  function whole(pieces, factor) {
    const corners = pieces.flatMap((piece) => piece.box.map((at) => at.map((each, k) => each + factor * piece.apart[k])));
    const [low, high] = span(corners);
    return {
      centre: middle([low, high]),
      radius: Math.hypot(...low.map((each, k) => high[k] - each)) / 2 || 1,
    };
  }

  /* ------------------------------------------------------------------ drawing */

  const SEEN = "uniform mat3 turn; uniform vec3 shift, scale; vec3 seen(vec3 at) { return (turn * at + shift) * scale; }";
  const FACE = [
    `attribute vec3 at, normal; varying float light; ${SEEN}
    void main() {
      gl_Position = vec4(seen(at), 1.0);
      light = min(1.0, max(0.0, dot(turn * normal, vec3(-0.5, 0.84, 0.58))));
    }`,
    `precision mediump float; varying float light; uniform mat3 tones;
    void main() {
      vec3 seen = light < 0.5 ? mix(tones[0], tones[1], 2.0 * light) : mix(tones[1], tones[2], 2.0 * light - 1.0);
      gl_FragColor = vec4(seen, 1.0);
    }`,
  ];
  const LINE = [
    `attribute vec3 a, b; attribute vec2 corner; uniform vec2 pixel; uniform float width; ${SEEN}
    void main() {
      vec3 p = seen(a), q = seen(b);
      vec2 along = (q.xy - p.xy) / pixel;
      along = length(along) > 0.001 ? normalize(along) : vec2(1.0, 0.0);
      vec2 out_by = along * (corner.x * 2.0 - 1.0) * 0.5 + vec2(-along.y, along.x) * corner.y;
      gl_Position = vec4(mix(p, q, corner.x) + vec3(out_by * pixel * width, 0.0), 1.0);
    }`,
    `precision mediump float; uniform vec3 colour;
    void main() { gl_FragColor = vec4(colour, 1.0); }`,
  ];

  function program(gl, [vertex, fragment], attributes) {
    const made = gl.createProgram();
    for (const [kind, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]]) {
      const shader = gl.createShader(kind);
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(made, shader);
    }
    gl.linkProgram(made);
    const places = {};
    const stride = 4 * attributes.reduce((sum, [, size]) => sum + size, 0);
    return {
      use: () => gl.useProgram(made),
      set: (name) => (places[name] = places[name] || gl.getUniformLocation(made, name)),
      bind(buffer) {
        gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
        let offset = 0;
        for (const [name, size] of attributes) {
          const where = gl.getAttribLocation(made, name);
          gl.enableVertexAttribArray(where);
          gl.vertexAttribPointer(where, size, gl.FLOAT, false, stride, offset);
          offset += 4 * size;
        }
      },
    };
  }

  function painter(gl, model) {
    const face = program(gl, FACE, [["at", 3], ["normal", 3]]);
    const line = program(gl, LINE, [["a", 3], ["b", 3], ["corner", 2]]);
    const kept = (numbers) => {
      const buffer = gl.createBuffer();
      gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
      gl.bufferData(gl.ARRAY_BUFFER, numbers, gl.STATIC_DRAW);
      return buffer;
    };
    const shapes = model.shapes.map((shape) => ({
      faces: kept(shape.faces), faceCount: shape.faces.length / 6, lines: kept(shape.lines), lineCount: shape.lines.length / 8,
      reach: Math.min(...across(box(shape.points, STILL)).sort((a, b) => a - b).slice(1)), // its middle measure
    }));
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.enable(gl.CULL_FACE);

    const pass = (kind, list, scene, colour) => {
      kind.use();
      gl.uniform3fv(kind.set("scale"), scene.scale);
      for (const { piece, turn, shift, isNew } of list) {
        gl.uniformMatrix3fv(kind.set("turn"), false, turn);
        gl.uniform3fv(kind.set("shift"), shift);
        const shape = shapes[piece.shape];
        if (kind === face) gl.uniformMatrix3fv(kind.set("tones"), false, colour(piece, isNew));
        else {
          gl.uniform3fv(kind.set("colour"), colour(piece, isNew));
          gl.uniform1f(kind.set("width"), scene.density * Math.min(0.6, (shape.reach * scene.scale[1] * scene.height) / scene.density / 90));
        }
        kind.bind(kind === face ? shape.faces : shape.lines);
        gl.drawArrays(gl.TRIANGLES, 0, kind === face ? shape.faceCount : shape.lineCount);
      }
    };

    /* Which piece is seen where: small, each piece in a colour that is its number in the list. */
    const aside = { frame: gl.createFramebuffer(), colour: gl.createRenderbuffer(), depth: gl.createRenderbuffer() };
    function seen(list, scene) {
      const width = Math.max(1, Math.round(scene.width / scene.density / 2));
      const height = Math.max(1, Math.round(scene.height / scene.density / 2));
      gl.bindFramebuffer(gl.FRAMEBUFFER, aside.frame);
      for (const [buffer, kind, at] of [
        [aside.colour, gl.RGBA4, gl.COLOR_ATTACHMENT0], [aside.depth, gl.DEPTH_COMPONENT16, gl.DEPTH_ATTACHMENT],
      ]) {
        gl.bindRenderbuffer(gl.RENDERBUFFER, buffer);
        gl.renderbufferStorage(gl.RENDERBUFFER, kind, width, height);
        gl.framebufferRenderbuffer(gl.FRAMEBUFFER, at, gl.RENDERBUFFER, buffer);
      }
      gl.viewport(0, 0, width, height);
      gl.clearColor(0, 0, 0, 0);
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
      const number = new Map(list.map(({ piece }, at) => [piece, at + 1]));
      const told = (piece) => [0, 1, 2].flatMap(() => [8, 4, 0].map((by) => ((number.get(piece) >> by) & 15) / 15));
      pass(face, list, scene, told); // all three tones alike: no shade
      const found = new Uint8Array(4 * width * height);
      gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, found);
      gl.bindFramebuffer(gl.FRAMEBUFFER, null);
      const of = (at) => [0, 1, 2].reduce((sum, k) => 16 * sum + Math.round(found[4 * at + k] / 17), 0) - 1;
      return { width, height, of };
    }

    const paint = (list, scene, colours) => {
      gl.viewport(0, 0, scene.width, scene.height);
      gl.clearColor(0, 0, 0, 0);
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
      gl.enable(gl.CULL_FACE);
      gl.enable(gl.POLYGON_OFFSET_FILL);
      gl.polygonOffset(2, 2);
      pass(face, list, scene, (piece, isNew) => colours.face(model.shapes[piece.shape].tint, isNew, piece));
      gl.disable(gl.POLYGON_OFFSET_FILL);
      gl.disable(gl.CULL_FACE);
      line.use();
      gl.uniform2f(line.set("pixel"), 2 / scene.width, 2 / scene.height);
      pass(line, list, scene, (piece, isNew) => colours.line(isNew));
    };
    return { paint, seen };
  }

  /* The theme's own colours, light or dark, as numbers from 0 to 1: a face is told from the next by its tone. */
  function themed(named) {
    const style = getComputedStyle(place);
    const of = (name) => {
      const text = style.getPropertyValue(`--${name}`).trim();
      return [1, 3, 5].map((at) => parseInt(text.slice(at, at + 2), 16) / 255);
    };
    const tones = (family) => ["dark", "mid", "light"].flatMap((tone) => of(`${family}-${tone}`));
    const [face, fresh] = [tones("face"), tones("new")];
    const [accent, ink, edge] = [of("accent"), of("ink"), of("new-line")];
    const grey = (k) => (face[k - (k % 3)] + face[k - (k % 3) + 1] + face[k - (k % 3) + 2]) / 3;
    const metal = face.map((_, k) => 0.75 * grey(k) + 0.25 * ink[k % 3]);
    const away = of("paper")[1] > 0.5 ? -1 : 1; // further sheets go on away from the ground
    const sheet = (tint) => 1 + away * 0.13 * Math.max(0, ["wood", "wood-dark", "waste"].indexOf(tint));
    return {
      face(tint, isNew, piece) {
        const tones = isNew ? fresh : tint === "soft" ? metal : face;
        const own = tones.map((each) => Math.min(1, each * sheet(tint)));
        return piece === named ? own.map((each, k) => 0.4 * each + 0.6 * accent[k % 3]) : own;
      },
      line: (isNew) => (isNew ? edge : ink),
    };
  }

  /* ------------------------------------------------------------------ view and controls */

  const HOME = { azimuth: -33, elevation: 24, zoom: 1, x: 0, y: 0 };
  const LIMITS = { elevation: [-90, 90], zoom: [0.5, 12] };

  function show(canvas, gl, model) {
    const wanted = { ...HOME, spread: 0, coming: 0 };
    const now = { ...wanted };
    const still = matchMedia("(prefers-reduced-motion: reduce)");
    const last = model.steps.length + 1; // one place beyond the steps: the finished thing
    let step = last;
    let painted = painter(gl, model);
    let asked = 0;
    let named = null; // the piece that the reader asked for by name
    let scene = { list: [] };

    function change(values) {
      for (const [name, value] of Object.entries(values)) {
        const [least, most] = LIMITS[name] || [-Infinity, Infinity];
        wanted[name] = Math.min(most, Math.max(least, value));
      }
      if (still.matches) Object.assign(now, wanted);
      ask();
    }

    function ask() {
      if (!asked) asked = requestAnimationFrame(frame);
    }

    let before = 0;
    function frame(time) {
      const share = 1 - Math.exp(-Math.min(50, time - before) / 110);
      before = time;
      asked = 0;
      if (!canvas.isConnected) return; // put away meanwhile
      let moving = false;
      for (const name of Object.keys(now)) {
        const rest = wanted[name] - now[name];
        const near = Math.abs(rest) < 0.002;
        now[name] = near ? wanted[name] : now[name] + rest * share;
        moving = moving || !near;
      }
      draw();
      if (moving) ask();
    }

    function view() {
      const [a, e] = [now.azimuth, now.elevation].map((each) => (each * Math.PI) / 180);
      const right = [Math.cos(a), Math.sin(a), 0];
      const eye = [Math.sin(a) * Math.cos(e), -Math.cos(a) * Math.cos(e), Math.sin(e)];
      const up = [-eye[2] * right[1], eye[2] * right[0], eye[0] * right[1] - eye[1] * right[0]];
      return [right, up, eye];
    }

    function draw() {
      const density = Math.min(2, window.devicePixelRatio || 1);
      const width = Math.max(1, Math.round(canvas.clientWidth * density));
      const height = Math.max(1, Math.round(canvas.clientHeight * density));
      if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
      const mixed = (from, to) => from + (to - from) * now.spread;
      const centre = model.home.centre.map((each, k) => mixed(each, model.apart.centre[k]));
      const radius = mixed(model.home.radius, model.apart.radius);
      const axes = view();
      const size = (now.zoom / radius) * 1.1;
      const scale = [(size * Math.min(width, height)) / width, (size * Math.min(width, height)) / height, -1 / (4 * radius)];
      const seen = (at) => axes.map((axis) => axis.reduce((sum, each, k) => sum + each * at[k], 0));
      const list = shown().map((piece) => {
        const isNew = step < last && piece.step === model.steps[step - 1].number;
        const away = isNew ? Math.max(now.spread, now.coming) : now.spread;
        const origin = [0, 1, 2].map((k) => piece.at[9 + k] + away * piece.apart[k] - centre[k]);
        const shift = seen(origin);
        shift[0] += now.x * radius;
        shift[1] += now.y * radius;
        return { piece, isNew, shift, turn: [0, 3, 6].flatMap((k) => seen(piece.at.slice(k, k + 3))) };
      });
      scene = { list, scale, width, height, density };
      painted.paint(list, scene, themed(named));
      label();
    }

    const shown = () => {
      const most = step < last ? model.steps[step - 1].number : Infinity;
      return model.pieces.filter((piece) => piece.step <= most);
    };

    /* The marks of the pieces that are seen, where each is seen best; none covers another. */
    const marks = find("marks");
    function label() {
      const layer = find("labels");
      layer.replaceChildren();
      const wanted = scene.list.filter(({ piece }) => (marks.checked && !piece.hardware) || piece === named);
      if (!wanted.length) return;
      const where = places(painted.seen(scene.list, scene));
      const taken = [];
      for (const each of wanted.sort((a, b) => (b.piece === named) - (a.piece === named))) {
        const at = where.get(each.piece);
        if (!at) continue;
        const text = document.createElement("span");
        text.textContent = each.piece.mark || each.piece.title;
        text.style.left = `${100 * at[0]}%`;
        text.style.top = `${100 * at[1]}%`;
        layer.append(text);
        const own = text.getBoundingClientRect();
        const hides = taken.some((o) => own.left < o.right && o.left < own.right && own.top < o.bottom && o.top < own.bottom);
        if (hides) text.remove();
        else taken.push(own);
      }
    }

    /* Where each piece is seen best: of the points that show it, those with the most of it around
       them, as far as a mark needs it (so that none stands on a hole); of these the one nearest to
       the middle. */
    const ENOUGH = 7; // steps of 4 CSS pixels
    function places({ width, height, of }) {
      const [wide, high] = [width, height].map((each) => Math.floor(each / 2));
      const who = Int16Array.from({ length: wide * high }, (_, at) => of((2 * Math.floor(at / wide) + 1) * width + 2 * (at % wide) + 1));
      const deep = new Uint16Array(who.length);
      const room = (at, by) => (who[at - by] === who[at] ? deep[at - by] : 0);
      for (let at = 0; at < who.length; at += 1) deep[at] = 1 + Math.min(room(at, 1), room(at, wide));
      for (let at = who.length - 1; at >= 0; at -= 1) deep[at] = Math.min(deep[at], 1 + room(at, -1), 1 + room(at, -wide));
      const points = new Map();
      for (const [at, own] of who.entries()) {
        const entry = scene.list[own];
        if (!entry) continue;
        if (!points.has(entry.piece)) points.set(entry.piece, []);
        points.get(entry.piece).push([2 * (at % wide) + 1, 2 * Math.floor(at / wide) + 1, Math.min(ENOUGH, deep[at])]);
      }
      const best = new Map();
      for (const [piece, seen] of points) {
        const mean = [0, 1].map((k) => seen.reduce((sum, at) => sum + at[k], 0) / seen.length);
        const far = (at) => Math.hypot(at[0] - mean[0], at[1] - mean[1]);
        const [x, y] = seen.reduce((one, other) => (other[2] - one[2] || far(one) - far(other)) > 0 ? other : one);
        if (seen.length > 8) best.set(piece, [x / width, 1 - y / height]);
      }
      return best;
    }

    /* A piece by its name: chosen from the list, or tapped. */
    const chooser = find("piece");
    const first = (piece) => (piece.hardware ? model.pieces.findIndex((other) => other.title === piece.title) : model.pieces.indexOf(piece));
    for (const [index, piece] of model.pieces.entries()) {
      if (first(piece) !== index) continue;
      const option = document.createElement("option");
      option.value = index;
      option.textContent = [piece.mark, piece.title].filter(Boolean).join(" ");
      chooser.append(option);
    }
    function name(piece) {
      named = piece;
      chooser.value = piece ? first(piece) : "";
      told();
      ask();
    }
    chooser.addEventListener("change", () => name(model.pieces[chooser.value] || null));
    function tap(event) {
      const { width, height, of } = painted.seen(scene.list, scene);
      const box = canvas.getBoundingClientRect();
      const x = Math.floor(((event.clientX - box.left) / box.width) * width);
      const y = Math.floor((1 - (event.clientY - box.top) / box.height) * height);
      const entry = x >= 0 && y >= 0 && x < width && y < height && scene.list[of(y * width + x)];
      name(entry && entry.piece !== named ? entry.piece : null);
    }
    marks.addEventListener("change", ask);

    /* Sliders. */
    const steps = find("steps");
    const spread = find("spread");
    steps.max = last;
    steps.value = last;
    find("steps-row").hidden = last < 2;
    find("spread-row").hidden = model.pieces.every((piece) => piece.apart.every((each) => !each));
    function about(piece) {
      const joins = model.steps.find(({ number }) => number === piece.step);
      const when = joins && say("viewscript-joins", { step: joins.number, title: joins.title });
      return [[piece.mark, piece.title].filter(Boolean).join(" "), piece.size, when].filter(Boolean).join(" · ");
    }
    function told() {
      const found = model.steps[step - 1];
      const added = model.pieces.filter((piece) => found && piece.step === found.number).map((piece) => piece.mark || piece.title);
      const told = found && { step: found.number, title: found.title, pieces: added.join(", ") };
      const text = found ? say(found.title ? "viewscript-step-title" : "viewscript-step", told) : say("viewscript-finished");
      find("told").textContent = named ? about(named) : text;
      steps.setAttribute("aria-valuetext", text);
    }
    steps.addEventListener("input", () => {
      const forward = Number(steps.value) > step;
      step = Number(steps.value);
      now.coming = forward && step < last && !still.matches ? 1 : 0;
      told();
      ask();
    });
    spread.addEventListener("input", () => {
      spread.setAttribute("aria-valuetext", `${spread.value} %`);
      change({ spread: spread.value / 100 });
    });
    told();

    /* Buttons, keys, and a pointer or two. */
    const turn = (a, e) => change({ azimuth: wanted.azimuth + a, elevation: wanted.elevation + e });
    const move = (x, y) => change({ x: wanted.x + x, y: wanted.y + y });
    const zoom = (by) => change({ zoom: wanted.zoom * by });
    const deeds = {
      left: () => turn(15, 0), right: () => turn(-15, 0), up: () => turn(0, -15), down: () => turn(0, 15),
      closer: () => zoom(1.25), farther: () => zoom(0.8), home: () => change(HOME),
      large: () => fill(!place.classList.contains("viewer-large")),
      close: () => {
        fill(false);
        close(gl);
      },
    };
    /* Large: the whole screen, or the whole window where the browser (of some phones) keeps the screen for films. */
    function fill(isLarge) {
      place.classList.toggle("viewer-large", isLarge);
      place.querySelector('[data-do="large"]').setAttribute("aria-pressed", String(isLarge));
      if (isLarge && document.fullscreenEnabled) place.requestFullscreen().catch(() => {});
      else if (!isLarge && document.fullscreenElement) document.exitFullscreen();
    }
    place.onfullscreenchange = () => {
      if (!document.fullscreenElement) fill(false);
    };
    place.onkeydown = ({ key }) => {
      if (key === "Escape") fill(false);
    };
    for (const button of place.querySelectorAll("[data-do]")) button.addEventListener("click", deeds[button.dataset.do]);
    const keys = {
      ArrowLeft: "left", ArrowRight: "right", ArrowUp: "up", ArrowDown: "down",
      "+": "closer", "=": "closer", "-": "farther", _: "farther", Home: "home", 0: "home",
    };
    const moves = { left: [-0.1, 0], right: [0.1, 0], up: [0, 0.1], down: [0, -0.1] };
    canvas.addEventListener("keydown", (event) => {
      const name = keys[event.key];
      if (!name || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      if (event.shiftKey && moves[name]) move(...moves[name]);
      else deeds[name]();
    });
    canvas.addEventListener("wheel", (event) => {
      if (document.activeElement !== canvas) return; // else the page scrolls on
      event.preventDefault();
      zoom(Math.exp(-event.deltaY / (event.deltaMode ? 20 : 600)));
    }, { passive: false });

    const held = new Map();
    let begun = wanted; // the view when it came down
    let way = 0; // how far the pointer went since it came down: a tap goes nowhere
    canvas.addEventListener("pointerdown", (event) => {
      canvas.setPointerCapture(event.pointerId);
      held.set(event.pointerId, [event.clientX, event.clientY]);
      way = held.size > 1 ? Infinity : 0;
      begun = { ...wanted };
    });
    canvas.addEventListener("pointerup", (event) => {
      if (held.delete(event.pointerId) && way < 6) tap(event);
    });
    canvas.addEventListener("pointercancel", (event) => {
      if (held.delete(event.pointerId)) change(begun); // the page scrolls: what it began to do is undone
    });
    canvas.addEventListener("pointermove", (event) => {
      const from = held.get(event.pointerId);
      if (!from) return;
      const to = [event.clientX, event.clientY];
      const [x, y] = [to[0] - from[0], to[1] - from[1]];
      const half = Math.min(canvas.clientWidth, canvas.clientHeight) / 2;
      const other = [...held].find(([id]) => id !== event.pointerId);
      held.set(event.pointerId, to);
      way += Math.hypot(x, y);
      if (other) {
        const apart = (at) => Math.hypot(at[0] - other[1][0], at[1] - other[1][1]) || 1;
        zoom(apart(to) / apart(from));
        move(x / half / wanted.zoom / 2, -y / half / wanted.zoom / 2);
      } else if (event.shiftKey) {
        move(x / half / wanted.zoom, -y / half / wanted.zoom);
      } else {
        turn(-x * 0.45, y * 0.45);
      }
      if (held.size) Object.assign(now, { ...wanted, spread: now.spread, coming: now.coming });
    });

    canvas.addEventListener("webglcontextlost", (event) => event.preventDefault());
    canvas.addEventListener("webglcontextrestored", () => {
      painted = painter(gl, model);
      ask();
    });
    matchMedia("(prefers-color-scheme: dark)").onchange = ask;
    new ResizeObserver(ask).observe(canvas);
    ask();
  }
})();
