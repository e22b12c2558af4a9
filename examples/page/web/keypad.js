// A keypad of whole inches and sixteenths, or of millimeters, for a hand in a glove. It types into the
// length that has the focus, and never takes the focus itself.
import {byId, button, el} from "dom";
import {get} from "state";

let field;
const wanted = matchMedia("(pointer: coarse)").matches || innerWidth < 700;
const pad = byId("keypad");

export const padWanted = () => wanted;

const reduced = (n) => { let d = 16; while (n % 2 === 0) { n /= 2; d /= 2; } return `${n}/${d}`; };

// split takes a length apart: minus, whole, fraction; undefined where it is written in another way.
const split = (text) => /^\s*(-?)\s*(\d*\.?\d*)(?:(?<=\d)[\s-]+|(?=\d+\/)|)(\d+\/\d+)?\s*$/.exec(text.replace(/^\s*(-?)(\d+\/\d+)\s*$/, "$1 $2"));

const type = (change) => {
  let parts = split(field.value);
  if (!parts) { // what is written in another way is marked first, and replaced by the next key
    if (field.selectionStart > 0 || field.selectionEnd < field.value.length) { field.select(); return; }
    parts = [];
  }
  const [sign, whole, fraction] = change(parts[1] ?? "", (parts[2] ?? "").trim(), parts[3] ?? "");
  field.value = sign + [whole, fraction].filter(Boolean).join(" ");
  field.dispatchEvent(new Event("input", {bubbles: true}));
};

const key = (text, name, change, look) => button(text, () => field && type(change), {tabindex: -1, "aria-label": name, class: look});

const next = () => {
  const all = [...document.querySelectorAll("#form input:not([type=radio]):not([type=checkbox]), #form select")].filter((e) => e.offsetParent);
  const after = all[all.indexOf(field) + 1];
  if (after) after.focus(); else hide();
};

const build = () => {
  const metric = (get(["units"]) ?? "in") !== "in";
  const digits = el("div", {class: "digits"});
  for (const d of ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0"]) digits.append(key(d, d, (s, w, f) => [s, w + d, f]));
  if (metric) digits.append(key(".", "point", (s, w, f) => [s, w.includes(".") ? w : (w || "0") + ".", f]));
  digits.append(key("⌫", "take the last away", (s, w, f) => f ? [s, w, ""] : [w ? s : "", w.slice(0, -1), ""]));
  if (!metric) digits.append(key("±", "minus or plus", (s, w, f) => [s ? "" : "-", w, f]));
  const sixteenths = el("div", {class: "sixteenths"});
  if (!metric) {
    for (let n = 1; n < 16; n++) sixteenths.append(key(reduced(n), reduced(n), (s, w, f) => [s, w, reduced(n)], n % 8 === 0 ? "half" : n % 4 === 0 ? "quarter" : ""));
    sixteenths.append(key("0", "0 sixteenths", (s, w) => [s, w, ""]));
  } else digits.append(key("±", "minus or plus", (s, w, f) => [s ? "" : "-", w, f]));
  pad.replaceChildren(el("p", {class: "of", "aria-hidden": "true"}, field.dataset.says ?? ""), el("div", {class: "keys"}, digits, sixteenths),
    el("div", {class: "ends"}, button("Letters", () => { const f = field; f.inputMode = "text"; hide(); f.blur(); f.focus(); f.inputMode = "none"; }, {tabindex: -1}),
      button("Close", hide, {tabindex: -1}), button("Next", next, {tabindex: -1, class: "strong"})));
};

const hide = () => { pad.hidden = true; document.body.classList.remove("typing"); };

// show brings the keypad up for a length.
export const show = (input) => {
  field = input;
  if (!wanted) return;
  build();
  pad.hidden = false;
  document.body.classList.add("typing");
  requestAnimationFrame(() => {
    const below = input.getBoundingClientRect().bottom - (innerHeight - pad.offsetHeight);
    if (below > -16) scrollBy({top: below + 32});
  });
};

pad.addEventListener("pointerdown", (e) => e.preventDefault()); // the length keeps the focus
document.addEventListener("focusin", (e) => {
  if (e.target.dataset?.kind === "length") show(e.target);
  else if (!pad.contains(e.target)) hide();
});
document.addEventListener("keydown", (e) => { if (e.key === "Escape" && !pad.hidden) hide(); });
