// The form: the room, what is bought, and the runs in the order in which one walks.
import {button, byId, drawn, el, toast} from "dom";
import {at, facts, resolve, written} from "schema";
import {file, get, onChange, set, snapshot} from "state";
import {ask} from "engine";
import {details, field, fields, label, list, notes, reveal, touched} from "fields";

const form = byId("form");
let runsBox;

// Room, panelling and runs come first; what is left of the file follows in parts that open.
const first = ["title", "units", "tape", "built", "closed", "profile", "stock", "runs", "$schema"];

const group = (title, text, ...inside) => {
  const id = "group-" + title.replace(/\W+/g, "-").toLowerCase();
  return el("section", {class: "group", "aria-labelledby": id}, el("h2", {id}, title), text && el("p", {class: "hint"}, text), ...inside);
};

const top = (name, options) => field([name], at([name]), options);

export const render = () => {
  runsBox = el("div", {class: "items"});
  const rest = Object.keys(facts.schema.properties).filter((n) => !first.includes(n));
  form.replaceChildren(
    el("div", {id: "mend", role: "status"}),
    group("The room", "", el("div", {class: "fields"}, top("title", {wide: true}), top("units", {buttons: true, usual: "in"}), top("tape"), top("built"), top("closed"))),
    group("The panelling", "", top("profile"),
      el("h3", {}, label(["stock"])), list(["stock"], at(["stock"]), {name: "Stock", item: {options: {squared: {}}}})),
    group("The runs", "A run is one flat stretch of wall, face on. Take them from left to right as you turn clockwise in the room; strike a level line, usually the counter or the floor, and tape everything from it and from the run’s left end.",
      el("div", {id: "runs", tabindex: -1}, runsBox), notes(["runs"]), el("p", {}, button("Add a run", addRun, {"data-add": "runs", class: "add strong"}))),
    group("Saw, gaps, trim and more", "What stays empty keeps its default.", ...rest.map((n) => top(n))));
  renderRuns();
  check();
};

// ends of a new run: the pattern of the room goes on round the corner.
const addRun = () => {
  const n = (get(["runs"]) ?? []).length;
  set(["runs", n], {left: {kind: n ? "inside corner" : "exposed"}, right: {kind: "exposed"}, heights: [{at: "0"}, {}]});
  renderRuns();
  byId(`runs[${n}].name`).focus();
};

const renderRuns = () => runsBox.replaceChildren(...(get(["runs"]) ?? []).map((_, i) => run(i)));

// heading says which run it is.
const heading = (i) => `Run ${i + 1}` + (get(["runs", i, "name"]) ? ": " + get(["runs", i, "name"]) : "");

const run = (i) => {
  const path = ["runs", i], s = resolve(at(path)), of = (n, options) => field([...path, n], s.properties[n], options);
  const title = el("h3", {id: `run-${i}`}, heading(i));
  const picture = el("figure", {class: "wall", id: `wall-${i}`, "aria-label": `Run ${i + 1} as measured`});
  const end = (side, says) => fields([...path, side], s.properties[side], {without: ["prominence"], options: {kind: {buttons: true, label: says, hint: ""}}});
  const weight = (side, says) => field([...path, side, "prominence"], resolve(s.properties[side]).properties.prominence, {label: says});
  const many = get(["runs"]).length;
  const move = (by) => button(by < 0 ? "Move left" : "Move right", () => {
    const runs = get(["runs"]);
    [runs[i], runs[i + by]] = [runs[i + by], runs[i]];
    set(["runs"], runs);
    renderRuns();
    byId(`run-${i + by}`).scrollIntoView();
  }, {class: "quiet", "aria-label": `Move ${by < 0 ? "left" : "right"}: run ${i + 1}`});
  const remove = button("Remove this run", () => {
    const back = snapshot(), name = heading(i);
    set(path, undefined);
    renderRuns();
    toast(name + " removed.", () => { back(); render(); });
    byId("runs").focus();
  }, {class: "quiet", "aria-label": `Remove this run, ${i + 1}`});
  const rest = Object.keys(s.properties).filter((n) => !["name", "width", "left", "right", "heights", "openings"].includes(n));
  const card = el("section", {class: "run", "aria-labelledby": `run-${i}`}, title, el("div", {class: "beside"}, picture), el("div", {class: "typing-side"}, notes(path),
    el("div", {class: "fields"}, of("name", {required: true, wide: true}), of("width", {required: true, hint: "Of the bare wall, from corner to corner.", changed: () => lastStation(i)})),
    end("left", "Left end"), end("right", "Right end"),
    el("h4", {}, "Heights, left to right"), el("p", {class: "hint"}, "At both ends, at both sides of every step, and every 4 ft between; top is above the level line, bottom too."), heights(path),
    el("h4", {}, "Boxes, windows, doors"), openings(path),
    details([...path, "more"], "Where the eye rests, breaks, cooking, trim, what to keep", "", () => el("div", {},
      el("div", {class: "fields"}, weight("left", "Left end: prominence"), weight("right", "Right end: prominence")), ...rest.map((n) => of(n)))),
    el("p", {class: "row"}, i > 0 && move(-1) || "", i + 1 < many && move(1) || "", remove)));
  card.addEventListener("input", () => { title.textContent = heading(i); });
  return card;
};

// lastStation keeps the last height at the end of the run, while nobody gave it another place.
const ends = new Map();
const lastStation = (i) => {
  const stations = get(["runs", i, "heights"]), last = stations?.[stations.length - 1], width = get(["runs", i, "width"]);
  if (!last || (last.at && last.at !== ends.get(i)) || last.taped) return;
  set(["runs", i, "heights", stations.length - 1, "at"], width);
  ends.set(i, width);
  const shown = byId(`runs[${i}].heights[${stations.length - 1}].at`);
  if (shown) shown.value = width;
};

// rows is a list of small rows with buttons of its own.
const rows = (path, name, row, adders) => {
  const box = el("div", {class: "list", id: written(path), tabindex: -1}), items = el("div", {class: "items"});
  const renderRows = () => {
    items.replaceChildren(...(get(path) ?? []).map((_, i) => {
      const remove = button("Remove", () => {
        const back = snapshot();
        set([...path, i], undefined);
        renderRows();
        toast(`${name} ${i + 1} removed.`, () => { back(); render(); });
        (items.children[Math.min(i, items.children.length - 1)]?.querySelector("input") ?? box).focus();
      }, {class: "quiet", "aria-label": `Remove ${name} ${i + 1}`});
      return el("fieldset", {class: "item " + name.toLowerCase()}, el("legend", {}, `${name} ${i + 1}`), row([...path, i]), remove);
    }));
    document.dispatchEvent(new Event("filled"));
  };
  const add = (put) => () => {
    const n = put(get(path) ?? []);
    renderRows();
    items.children[n]?.querySelector("input")?.focus();
  };
  box.append(items, el("div", {class: "row"}, ...adders(add)), notes(path));
  renderRows();
  return box;
};

const heights = (path) => {
  const all = [...path, "heights"], s = at([...all, 0]);
  const insert = (...stations) => (now) => { // before the last, which stands at the end of the run
    const n = Math.max(0, now.length - 1);
    set(all, [...now.slice(0, n), ...structuredClone(stations), ...now.slice(n)]);
    return n;
  };
  const plain = {only: ["at", "bottom", "top"], options: {at: {hint: ""}, bottom: {hint: ""}, top: {hint: ""}}}, taped = {only: ["bottom", "taped"], options: {bottom: {hint: ""}}};
  return rows(all, "Height", (one) => fields(one, s, get(one).taped ? taped : plain),
    (add) => [button("Add a height", add(insert({})), {"data-add": written(all), class: "add"}), button("Add a step", add(insert({}, {})), {class: "add"}),
      button("Add one taped from two points", add(insert({taped: {distances: ["", ""]}})), {class: "quiet"})]);
};

const openings = (path) => {
  const all = [...path, "openings"], s = at([...all, 0]), main = ["name", "kind", "left", "bottom", "width", "height"];
  const put = (kind, name, more) => (now) => {
    const taken = now.map((o) => o.name);
    let n = 1;
    while (taken.includes(`${name} ${n}`)) n++;
    set([...all, now.length], {name: `${name} ${n}`, kind, ...more});
    return now.length;
  };
  return rows(all, "Opening", (one) => el("div", {}, fields(one, s, {only: main, options: {kind: {buttons: true}, left: {hint: ""}, bottom: {hint: ""}, height: {hint: ""}}}),
    details([...one, "shape"], "Gangs, arch, other outline", "", () => fields(one, s, {without: main}))),
  (add) => [button("Add a box", add(put("box", "box")), {"data-add": written(all), class: "add"}), button("Add a window", add(put("window", "window")), {class: "add"}),
    button("Add a door", add(put("other", "door", {bottom: "0"})), {class: "add"}), button("Add another opening", add(put("other", "opening")), {class: "add"})]);
};

// What the engine says of the job: the walls as drawings, faults and doubts at their fields.
let latest = {}, of, asking = false, again = false, all = false;

const check = async () => {
  if (asking) { again = true; return; }
  asking = true;
  document.body.dataset.checking = "now"; // whoever drives the page waits for this to go
  try {
    const job = file(), answer = await ask({do: "check", job});
    latest = answer;
    of = job;
    (answer.walls ?? []).forEach((svg, i) => { const figure = byId(`wall-${i}`); if (figure && svg) drawn(figure, svg); });
    tell();
  } catch (error) { toast("The planner does not start: " + error.message); }
  asking = false;
  if (again) { again = false; check(); } else delete document.body.dataset.checking;
};

let soon;
onChange(() => { document.body.dataset.checking = "soon"; clearTimeout(soon); soon = setTimeout(check, 120); });

// tell puts each message at its field; one whose field nobody has come to yet only counts.
const tell = () => {
  document.querySelectorAll(".notes").forEach((e) => e.replaceChildren());
  document.querySelectorAll("[aria-invalid]").forEach((e) => e.removeAttribute("aria-invalid"));
  const faults = latest.faults ?? [];
  const open = (f) => all || !f.missing || touched.has(f.path);
  const place = (path) => {
    for (let p = path; p; p = p.replace(/(\.|^)[^.[]+$|\[\d+\]$/, "")) {
      const box = byId(p + "!");
      if (box) return [box, p];
    }
    return [];
  };
  for (const [notes, look] of [[faults.filter(open), "fault"], [latest.doubts ?? [], "doubt"]]) {
    for (const note of notes) {
      const [box, p] = place(note.path);
      box?.append(el("p", {class: look}, el("b", {}, look === "fault" ? "Mend: " : "Look: "), (p === note.path ? "" : note.path.slice(p.length).replace(/^\./, "") + ": ") + note.text));
      if (look === "fault" && p === note.path) byId(p)?.setAttribute("aria-invalid", "true");
    }
  }
  const shown = faults.filter(open), mend = byId("mend");
  if (!mend) return;
  const go = (f) => el("li", {}, el("a", {href: "#measure", onclick: (e) => { e.preventDefault(); reveal(f.path); }}, f.path || "the job"), ": " + f.text);
  mend.replaceChildren(shown.length ? el("div", {class: "fault"}, el("p", {}, el("b", {}, shown.length === 1 ? "One thing to mend" : `${shown.length} things to mend`)), el("ul", {}, ...shown.slice(0, 8).map(go))) : "");
};

document.addEventListener("filled", tell);

// faulty shows all that is wrong, also where nobody has typed yet, and says whether anything is.
export const faulty = async () => {
  all = true;
  if (of !== file()) await check();
  while (asking) await new Promise((r) => setTimeout(r, 30));
  tell();
  return latest.faults ?? [];
};
export const fresh = () => { all = false; touched.clear(); ends.clear(); };
export const firstJob = () => ({runs: [{left: {kind: "exposed"}, right: {kind: "exposed"}, heights: [{at: "0"}, {}]}]});
