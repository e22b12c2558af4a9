// Fields made from the schema of the job file. Each has the path of its place as its id.
import {button, byId, el, toast} from "dom";
import {facts, keeps, kind, resolve, written} from "schema";
import {get, set, snapshot} from "state";
import {padWanted} from "keypad";

// said has other words than a field's name, by the path without numbers.
const said = {
  "title": "Title", "units": "Units", "tape": "Tape: its smallest mark", "closed": "Closed: the last run meets the first", "built": "Built: the year",
  "stock": "Sheets and boards", "stock.squared": "Squared: both ends are square already", "stock.left_phase": "Left phase", "gaps": "Gaps", "finish": "Materials and prices", "priorities": "What is best",
  "installed": "Panels on the wall already", "plates": "Cover plates", "runs.breaks": "Breaks", "runs.focal": "Where the eye rests",
};

// Sentences that the schema lacks.
const hints = {
  "tape": "1/16 unless you say otherwise; 1 mm in a metric job.",
  "stock.length": "Along the grooves.",
  "stock.left_phase": "From the start of the repeat to the sheet’s left edge.",
  "stock.count": "Only where there are no more; empty: as many as needed.",
  "runs.left.lean": "Plumb a line at the foot: how far the top stands to the right of it; to the left with a minus.",
  "runs.right.lean": "Plumb a line at the foot: how far the top stands to the right of it; to the left with a minus.",
  "runs.openings.rise": "Of an arched head, above the height.",
  "gaps.window": "Round all openings but boxes.",
  "closed": "", "built": "Of the house, for the cautions.", "title": "", "stock.squared": "",
  "units": "Of bare numbers, and of what you read.",
};

const plain = (path) => path.filter((s) => typeof s !== "number").join(".");
export const label = (path, s) => {
  const name = [...path].reverse().find((x) => typeof x !== "number");
  return said[plain(path)] ?? (name.charAt(0).toUpperCase() + name.slice(1)).replaceAll("_", " ");
};
const hint = (path, s) => hints[plain(path)] ?? s.description ?? "";

// notes is where messages about a place stand, and those below it that have no field.
export const notes = (path) => el("div", {class: "notes", id: written(path) + "!", "data-notes": written(path)});

export const touched = new Set();

// typed puts what was typed into the job: a number as a number where it is one.
const typed = (path, s, text) => {
  const number = kind(s) === "number" && !keeps(s) && /^-?\d+(\.\d+)?$/.test(text.trim());
  set(path, text === "" ? "" : number ? Number(text) : text);
};

const about = (id, hinted) => (hinted ? id + "? " : "") + id + "!";

const input = (path, s, options) => {
  const id = written(path), says = options.label ?? label(path, s), text = options.hint ?? hint(path, s), how = kind(s);
  const value = get(path);
  const field = el("input", {id, name: id, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", "data-kind": how, "data-says": says,
    inputmode: how === "number" ? "decimal" : how === "length" && padWanted() ? "none" : false,
    "aria-describedby": about(id, text), "aria-required": options.required ? "true" : false, value: typeof value === "object" ? JSON.stringify(value) : value,
    oninput: (e) => typed(path, s, e.target.value), onchange: () => { touched.add(id); options.changed?.(); }});
  return el("div", {class: "field " + how + (options.wide ? " wide" : "")}, el("label", {for: id}, says), field, text && el("p", {class: "hint", id: id + "?"}, text), notes(path));
};

const yes = (path, s, options) => {
  const id = written(path), text = options.hint ?? hint(path, s);
  const box = el("input", {id, name: id, type: "checkbox", checked: get(path) === true, "aria-describedby": about(id, text),
    onchange: (e) => set(path, e.target.checked ? true : undefined)});
  return el("div", {class: "field yes"}, el("label", {for: id}, box, el("span", {}, options.label ?? label(path, s))), text && el("p", {class: "hint", id: id + "?"}, text), notes(path));
};

const words = (path, s, options) => {
  const id = written(path), all = resolve(s).enum, text = options.hint ?? hint(path, s), says = options.label ?? label(path, s);
  const take = (word) => { touched.add(id); set(path, word || undefined); options.changed?.(); };
  if (options.buttons) {
    const choices = all.map((word) => el("label", {class: "word"},
      el("input", {type: "radio", name: id, value: word, checked: (get(path) ?? options.usual) === word, onchange: () => take(word)}), el("span", {}, word)));
    return el("fieldset", {class: "field words", id, "aria-describedby": about(id, text)}, el("legend", {}, says), el("div", {class: "row"}, ...choices),
      text && el("p", {class: "hint", id: id + "?"}, text), notes(path));
  }
  const list = el("select", {id, name: id, "aria-describedby": about(id, text), onchange: (e) => take(e.target.value)},
    el("option", {value: ""}, "not said"), ...all.map((word) => el("option", {value: word, selected: get(path) === word}, word)));
  return el("div", {class: "field"}, el("label", {for: id}, says), list, text && el("p", {class: "hint", id: id + "?"}, text), notes(path));
};

const own = " ";

// either is a ready thing by its name, or one of the job's own.
const either = (path, s, options) => {
  const [ready, other] = resolve(s).anyOf;
  if (!ready.enum) return input(path, ready, options);
  const id = written(path), box = el("div", {class: "either"}), part = el("div");
  const render = () => {
    const value = get(path), mine = typeof value === "object" && value !== null;
    const about = facts.profiles.find((p) => p.name === value);
    part.replaceChildren(mine ? fields(path, other) : about ? el("details", {class: "part"}, el("summary", {}, "Figures of this pattern"), el("pre", {class: "about"}, about.about.trim())) : "");
  };
  const known = ready.enum.includes(get(path));
  const list = el("select", {id, name: id, "aria-describedby": id + "!", onchange: (e) => {
    const back = snapshot(), before = get(path);
    set(path, e.target.value === own ? {} : e.target.value || undefined);
    if (typeof before === "object") toast("The pattern of your own was left.", back);
    render();
  }}, el("option", {value: ""}, "choose one"), ...ready.enum.map((name) => el("option", {value: name, selected: get(path) === name}, name)),
    el("option", {value: own, selected: typeof get(path) === "object"}, "a pattern of your own"));
  if (!known && typeof get(path) === "string" && get(path)) list.append(el("option", {value: get(path), selected: true}, get(path)));
  box.append(el("div", {class: "field wide"}, el("label", {for: id}, options.label ?? label(path, s)), list, notes(path)), part);
  render();
  return box;
};

// details is a part that opens; it is filled when it does.
export const details = (path, title, text, fill) => {
  const part = el("details", {class: "part", "data-part": written(path)}, el("summary", {}, title), el("div", {class: "hint"}, text));
  const id = notes(path);
  part.append(id);
  let filled = false;
  const open = () => { if (part.open && !filled) { filled = true; part.append(fill()); document.dispatchEvent(new Event("filled")); } };
  part.addEventListener("toggle", open);
  part.fill = () => { part.open = true; open(); };
  return part;
};

// list is a list of things, each of which can be taken away.
export const list = (path, s, options = {}) => {
  s = resolve(s);
  const box = el("div", {class: "list", id: written(path), tabindex: -1}), items = el("div", {class: "items"});
  const pair = s.minItems !== undefined && s.minItems === s.maxItems;
  const render = () => {
    const all = pair ? Array(s.minItems).fill() : get(path) ?? [];
    items.replaceChildren(...all.map((_, i) => {
      const at = [...path, i], name = options.name ?? label(path, s), inner = kind(s.items);
      if (pair) return input(at, s.items, {label: ["across", "up"][i] ?? String(i + 1), hint: ""});
      const remove = button("Remove", () => {
        const back = snapshot();
        set(at, undefined);
        render();
        document.dispatchEvent(new Event("filled"));
        toast(`${name} ${i + 1} removed.`, back);
        (items.children[Math.min(i, items.children.length - 1)]?.querySelector("input,select") ?? add).focus();
      }, {class: "quiet", "aria-label": `Remove ${name} ${i + 1}`});
      return el("fieldset", {class: "item"}, el("legend", {}, `${name} ${i + 1}`), inner === "object" ? fields(at, s.items, options.item) : field(at, s.items, {label: `${name} ${i + 1}`, hint: ""}), remove);
    }));
  };
  const add = pair ? "" : button("Add: " + (options.name ?? label(path, s)).toLowerCase(), () => {
    const n = (get(path) ?? []).length, inner = kind(s.items);
    set([...path, n], options.first?.(n) ?? (inner === "object" ? {} : inner === "list" ? [] : ""));
    render();
    document.dispatchEvent(new Event("filled"));
    items.lastElementChild.querySelector("input,select")?.focus();
  }, {"data-add": written(path), class: "add"});
  box.append(items, add, notes(path));
  render();
  return box;
};

// The order in which one measures and writes, that of the measuring sheet; what is not listed follows.
const order = ["name", "run", "item", "kind", "at", "from", "to", "features", "left", "bottom", "top", "right", "width", "length", "height", "thickness", "depth", "size", "gangs", "count",
  "price", "left_phase", "kerf", "square_up", "side", "seam", "box", "window", "prominence", "lean", "bases", "corners", "house", "paint", "primer", "before", "after", "coverage",
  "containers", "cartridges", "sealant", "adhesive", "nails", "furring", "boxes", "extenders", "screws", "packs", "tape", "rolls", "sheeting", "trim", "stick", "extras", "buy", "tax"];
const rank = (name) => order.includes(name) ? order.indexOf(name) : order.length;

// fields are those of an object; only and without say which.
export const fields = (path, s, {only, without = [], options = {}} = {}) => {
  s = resolve(s);
  const names = (only ?? Object.keys(s.properties).sort((a, b) => rank(a) - rank(b))).filter((n) => s.properties[n] && !without.includes(n));
  return el("div", {class: "fields"}, ...names.map((n) => field([...path, n], s.properties[n], {required: s.required.includes(n), ...options[n]})));
};

// field makes any field.
export const field = (path, s, options = {}) => {
  switch (kind(s)) {
  case "yes": return yes(path, s, options);
  case "words": return words(path, s, options);
  case "either": return either(path, s, options);
  case "object": return details(path, options.label ?? label(path, s), options.hint ?? hint(path, s), () => fields(path, s));
  case "list":
    if (resolve(s).minItems !== undefined) return el("fieldset", {class: "pair"}, el("legend", {}, options.label ?? label(path, s)), list(path, s));
    return details(path, options.label ?? label(path, s), options.hint ?? hint(path, s), () => list(path, s, options));
  }
  return input(path, s, options);
};

// reveal opens what hides the field at a path and gives it the focus.
export const reveal = (text) => {
  location.hash = "#measure";
  const hides = (part) => !part.open && (text === part.dataset.part || text.startsWith(part.dataset.part + ".") || text.startsWith(part.dataset.part + "["));
  for (let part; (part = [...document.querySelectorAll("details[data-part]")].find(hides));) part.fill();
  for (let at = text; at; at = at.replace(/(\.|^)[^.[]+$|\[\d+\]$/, "")) {
    const e = byId(at) ?? document.querySelector(`[data-part="${CSS.escape(at)}"] > summary`);
    if (e) {
      const target = e.matches("fieldset") ? e.querySelector("input") : e;
      target.focus();
      target.scrollIntoView({block: "center"});
      return;
    }
  }
};
