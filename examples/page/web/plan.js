// The plan: searched in the worker, its choices side by side, and what the person insists on.
import {button, byId, drawn, el} from "dom";
import {at, resolve} from "schema";
import {file, get, set, snapshot} from "state";
import {ask} from "engine";
import {faulty} from "measure";
import {reveal} from "fields";

const box = byId("planning");
let made, taken = 0, of = "", searching = false, before;

// plan is what was made of the job as it is now; nothing where that has changed since.
export const plan = () => made && of === file() ? {choices: made, taken} : undefined;

const paragraph = (text) => el("div", {class: "says"}, ...text.trim().split(/\n\n+/).map((p) => el("p", {}, p.replace(/\s*\n\s*/g, " "))));

export const render = () => {
  const now = plan();
  box.replaceChildren(el("div", {id: "search", "aria-live": "polite"}), el("div", {class: "row"},
    button(now ? "Plan again" : "Plan it", () => search(1), {id: "start", class: "strong"}),
    now ? button("Search ten times as long", () => search(10), {id: "longer"}) : ""), el("div", {id: "result"}));
  if (now) return result();
  if (made) byId("search").append(el("p", {}, "The job has changed since it was planned."));
};

const search = async (effort) => {
  if (searching) return;
  const status = byId("search");
  status.replaceChildren(el("p", {}, "Reading the job …"));
  const faults = await faulty();
  if (faults.length) {
    status.replaceChildren(el("div", {class: "fault"}, el("p", {}, el("b", {}, "The job is not ready to be planned:")), el("ul", {}, ...faults.slice(0, 30).map((f) =>
      el("li", {}, el("a", {href: "#measure", onclick: (e) => { e.preventDefault(); reveal(f.path); }}, f.path || "the job"), ": " + f.text)))));
    return;
  }
  searching = true;
  const job = file(), stop = button("Stop, take the best so far", () => { stop.disabled = true; ask({do: "stop"}); }, {id: "stop"});
  const says = el("p", {}, "Searching …");
  status.replaceChildren(says, el("progress", {"aria-label": "Searching"}), el("div", {}, stop));
  byId("start").disabled = true;
  const began = performance.now();
  try {
    const answer = await ask({do: "plan", job, effort}, ({seconds}) => { const text = `Searching for a better layout, ${seconds} s`; if (seconds && says.textContent !== text) says.textContent = text; });
    if (answer.faults) {
      status.replaceChildren(el("div", {class: "fault"}, ...answer.faults.map((f) => el("p", {}, (f.path ? f.path + ": " : "") + f.text))));
    } else {
      made = answer.choices;
      of = job;
      taken = made.length - 1;
      searching = false;
      box.style.minHeight = `${box.offsetHeight}px`; // what one looks at stays in its place
      const walls = render();
      document.body.dataset.took = Math.round(performance.now() - began);
      byId("search").append(el("p", {}, answer.stopped ? "Stopped: this is the best so far." : "Planned."));
      await walls;
      box.style.minHeight = "";
    }
  } catch (error) { status.replaceChildren(el("p", {class: "fault"}, error.message)); }
  searching = false;
  if (byId("start")) byId("start").disabled = false;
};

const figure = (name, value) => el("div", {}, el("dt", {}, name), el("dd", {}, value));

const count = (n, noun) => `${n} ${noun}${n === 1 ? "" : "s"}`;

// summed is a choice in a few words.
const summed = (c) => [count(c.sheets, c.unit), c.cost && `${c.cost} all in all`, `flaws ${c.flaws}`].filter(Boolean).join(", ");

// compared says what the last wish changed, with the way back.
const compared = () => el("div", {class: "compared", role: "status"}, el("p", {}, "Before: ", el("b", {}, before.says), ". Now: ", el("b", {}, summed(made[taken])), "."),
  button("Take it back", takeBack, {id: "back"}));

const takeBack = async () => { const {back, run} = before; before = undefined; back(); await again(run); };

// again plans what was wished for a run, and shows its price beside the wish.
const again = async (run) => {
  const focus = document.activeElement?.id;
  await search(1);
  if (!plan()) {
    if (before) byId("search").append(button("Take it back", takeBack, {id: "back"}));
    byId("search").scrollIntoView({block: "center"});
    byId("back")?.focus({preventScroll: true});
    return;
  }
  [focus, `origin-${run}`, `insist-${run}`].map(byId).find((e) => e?.checkVisibility())?.focus({preventScroll: true});
  document.querySelector(".compared")?.scrollIntoView({block: "nearest"});
};

// wish sets what the person insists on at a run and plans again at once.
const wish = async (run, change) => {
  before = {says: before?.says ?? summed(made[taken]), back: before?.back ?? snapshot(), run};
  change();
  await again(run);
};

const result = () => {
  const cards = made.map((c, i) => {
    const picture = el("div", {class: "preview"});
    drawn(picture, c.preview);
    const take = el("input", {type: "radio", name: "choice", id: `choice-${i}`, checked: i === taken, onchange: () => { taken = i; chosen(); }});
    return el("li", {class: "choice"}, el("label", {for: `choice-${i}`}, take, el("span", {}, count(c.sheets, c.unit) + (i === 0 && made.length > 1 ? ", looks best" : i === made.length - 1 && made.length > 1 ? ", needs least" : ""))),
      picture, el("dl", {}, figure("To buy", count(c.bought, c.unit)), c.cost && figure("Money, all in all", c.cost), figure("Flaws that are seen", c.flaws), figure("Panels", c.panels)), paragraph(c.says));
  });
  const rest = el("div", {id: "chosen"});
  byId("result").replaceChildren(el("h2", {}, made.length > 1 ? "Choose" : "The plan"), el("ul", {class: "choices"}, ...cards), rest);
  return chosen();
};

const chosen = async () => {
  const c = made[taken], walls = el("div", {id: "walls"});
  byId("chosen").replaceChildren(el("p", {class: "lead"}, c.head.replace(/\s*\n\s*/g, " ")),
    c.look?.length ? el("div", {class: "doubt"}, el("p", {}, el("b", {}, "Look at these before you buy")), el("ul", {}, ...c.look.map((n) => el("li", {}, n)))) : "",
    el("details", {class: "part"}, el("summary", {}, "What the search proves"), paragraph(c.search)),
    walls, el("p", {class: "on"}, el("a", {class: "button strong", href: "#take"}, "Take it away")));
  c.runs ??= (await ask({do: "walls", choice: taken})).runs; // nothing where another plan was made meanwhile
  walls.replaceChildren(...(c.runs ?? []).map((r, i) => run(r, i)));
};

const run = (r, i) => {
  const wide = el("div", {class: "across"}), narrow = el("div", {class: "onphone"});
  drawn(wide, r.drawing);
  drawn(narrow, r.narrow || r.drawing);
  return el("section", {class: "planned", "aria-labelledby": `planned-${i}`}, el("h3", {id: `planned-${i}`}, r.name), wide, narrow, before?.run === i ? compared() : "", insisted(r, i, [wide, narrow]));
};

// insisted has what the person may insist on: where the pattern starts, which way to work, seams.
const insisted = (r, i, drawings) => {
  const keep = resolve(at(["runs", i])).properties.keep, now = get(["runs", i, "keep"]) ?? {};
  if (!keep) return "";
  const slider = el("input", {type: "range", id: `origin-${i}`, min: 0, max: r.origins.length - 1, value: 0, "aria-describedby": `origin-${i}-now`}), shown = el("output", {id: `origin-${i}-now`, for: `origin-${i}`});
  const grain = drawings.flatMap((d) => [...d.querySelectorAll("g[clip-path] > .bead, g[clip-path] > .groove")]), tell = () => {
    const x = r.origins[slider.value], n = r.origins.length, by = (Number(slider.value) + n / 2) % n - n / 2; // the nearer way
    for (const e of grain) e.setAttribute("transform", `translate(${by * e.closest("svg").querySelector(".wall").getBBox().width / r.marks})`);
    shown.textContent = `A repeat starts at ${x}`; slider.setAttribute("aria-valuetext", x);
  };
  const take = () => { if (Number(slider.value)) wish(i, () => set(["runs", i, "keep", "origin"], r.origins[slider.value])); };
  const step = (by) => button(by < 0 ? "←" : "→", () => { slider.value = (Number(slider.value) + by + r.origins.length) % r.origins.length; tell(); }, {"aria-label": by < 0 ? "A mark to the left" : "A mark to the right"});
  slider.addEventListener("input", tell);
  slider.addEventListener("pointerup", take);
  slider.addEventListener("keydown", (e) => { if (e.key === "Enter") take(); });
  tell();
  for (const drawing of drawings) dragged(drawing, r, slider, tell, take);
  const locked = (x) => (now.seams ?? []).includes(x);
  const seams = (r.seams ?? []).map((x) => button(`${locked(x) ? "Locked" : "Lock"} at ${x}`, () => wish(i, () =>
    set(["runs", i, "keep", "seams"], locked(x) ? now.seams.filter((y) => y !== x) : [...now.seams ?? [], x])), {id: `lock-${i}-${x}`, "aria-pressed": String(locked(x)), class: locked(x) ? "strong" : ""}));
  return el("details", {class: "part", open: Object.keys(now).length > 0}, el("summary", {id: `insist-${i}`}, "Insist on something here"),
    el("div", {class: "insist"}, el("label", {for: `origin-${i}`}, "Where the pattern starts"), el("p", {class: "hint"}, "Drag the pattern in the drawing, or slide it here: let go, and you see what it costs. On a keyboard, Enter does that."),
      el("div", {class: "row"}, step(-1), slider, step(1)), el("p", {}, shown), el("div", {class: "row"}, button("Keep it here and see the price", take, {id: `keep-${i}`}),
        now.origin !== undefined ? button("Let the plan choose", () => wish(i, () => set(["runs", i, "keep", "origin"], undefined)), {class: "quiet"}) : "")),
    el("div", {class: "insist"}, el("p", {}, el("b", {}, "Which way to work"), `: now to the ${r.direction}`), el("div", {class: "row"}, ...["left", "right"].map((way) =>
      button(`To the ${way}`, () => wish(i, () => set(["runs", i, "keep", "direction"], now.direction === way ? undefined : way)), {id: `way-${i}-${way}`, "aria-pressed": String(now.direction === way), class: now.direction === way ? "strong" : ""})))),
    seams.length ? el("div", {class: "insist"}, el("p", {}, el("b", {}, "Seams")), el("div", {class: "row"}, ...seams)) : "");
};

// dragged lets a finger or a mouse drag the pattern along a drawing, mark by mark, and plans it where
// it is let go.
const dragged = (drawing, r, slider, tell, take) => {
  const wall = drawing.querySelector(".wall");
  if (!wall) return;
  let from, at;
  const put = (marks) => { const n = r.origins.length; slider.value = ((at + marks) % n + n) % n; tell(); };
  drawing.classList.add("drag");
  drawing.addEventListener("pointerdown", (e) => { from = e.clientX; at = Number(slider.value); drawing.setPointerCapture(e.pointerId); });
  drawing.addEventListener("pointermove", (e) => {
    if (from === undefined) return;
    slider.closest("details").open = true;
    put(Math.round((e.clientX - from) * r.marks / wall.getBoundingClientRect().width));
  });
  drawing.addEventListener("pointerup", () => { if (from !== undefined && Number(slider.value) !== at) take(); from = undefined; });
  drawing.addEventListener("pointercancel", () => { if (from !== undefined) put(0); from = undefined; }); // the page slides instead
};
