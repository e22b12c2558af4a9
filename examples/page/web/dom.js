// Elements and the words that the status line says.

// el makes an element: el("p", {class: "hint"}, "text", other). Texts are text, never HTML.
export const el = (name, attributes = {}, ...inside) => {
  const e = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) e.addEventListener(key.slice(2), value);
    else if (value === true) e.setAttribute(key, "");
    else if (value !== false && value !== undefined && value !== null) e.setAttribute(key, value);
  }
  e.append(...inside.filter((x) => x !== undefined && x !== null && x !== ""));
  return e;
};

export const byId = (id) => document.getElementById(id);

// button makes a button that does something.
export const button = (text, onclick, attributes = {}) => el("button", {type: "button", ...attributes, onclick}, text);

// drawn puts a drawing of the engine into an element. Its texts were escaped where it was made.
export const drawn = (into, svg) => {
  const parsed = new DOMParser().parseFromString(svg, "text/html").querySelector("svg");
  into.replaceChildren(...(parsed ? [document.adoptNode(parsed)] : []));
};

// toast says what was done, with a way back.
let fading;
export const toast = (text, undo) => {
  clearTimeout(fading);
  const box = byId("toast");
  box.replaceChildren(el("span", {}, text));
  if (undo) box.append(button("Undo", () => { box.replaceChildren(); undo(); }));
  fading = setTimeout(() => { if (!box.contains(document.activeElement)) box.replaceChildren(); }, 12000);
};
