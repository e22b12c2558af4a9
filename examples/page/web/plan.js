// The plan: searched in the worker, its choices side by side, and what the person insists on.
import {button, byId, drawn, el} from "dom";
import {file} from "state";
import {ask} from "engine";
import {faulty} from "measure";
import {reveal} from "fields";

const box = byId("planning");
let made, taken = 0, of = "", searching = false;

// plan is what was made of the job as it is now; nothing where that has changed since.
export const plan = () => made && of === file() ? {choices: made, taken} : undefined;

const paragraph = (text) => el("div", {class: "says"}, ...text.trim().split(/\n\n+/).map((p) => el("p", {}, p.replace(/\s*\n\s*/g, " "))));

export const render = () => {
  const now = plan();
  box.replaceChildren(el("div", {id: "search", "aria-live": "polite"}), el("div", {class: "row"},
    button(now ? "Plan again" : "Plan it", () => search(1), {id: "start", class: "strong"}),
    now ? button("Search ten times as long", () => search(10), {id: "longer"}) : ""), el("div", {id: "result"}));
  if (now) result();
  else if (made) byId("search").append(el("p", {}, "The job has changed since it was planned."));
};

export const search = async (effort) => {
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
  try {
    const answer = await ask({do: "plan", job, effort}, ({seconds}) => { const text = `Searching for a better layout, ${seconds} s`; if (seconds && says.textContent !== text) says.textContent = text; });
    if (answer.faults) {
      status.replaceChildren(el("div", {class: "fault"}, ...answer.faults.map((f) => el("p", {}, (f.path ? f.path + ": " : "") + f.text))));
    } else {
      made = answer.choices;
      of = job;
      taken = made.length - 1;
      searching = false;
      render();
      byId("search").append(el("p", {}, answer.stopped ? "Stopped: this is the best so far." : "Planned."));
    }
  } catch (error) { status.replaceChildren(el("p", {class: "fault"}, error.message)); }
  searching = false;
  if (byId("start")) byId("start").disabled = false;
};

const figure = (name, value) => el("div", {}, el("dt", {}, name), el("dd", {}, value));

const count = (n, noun) => `${n} ${noun}${n === 1 ? "" : "s"}`;

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
  chosen();
};

const chosen = () => {
  const c = made[taken];
  byId("chosen").replaceChildren(el("p", {class: "lead"}, c.head.replace(/\s*\n\s*/g, " ")),
    c.look?.length ? el("div", {class: "doubt"}, el("p", {}, el("b", {}, "Look at these before you buy")), el("ul", {}, ...c.look.map((n) => el("li", {}, (n.path ? n.path + ": " : "") + n.text)))) : "",
    el("details", {class: "part"}, el("summary", {}, "What the search proves"), paragraph(c.search)),
    ...c.runs.map((r, i) => run(r, i)), el("p", {class: "on"}, el("a", {class: "button strong", href: "#take"}, "Take it away")));
};

const run = (r, i) => {
  const wide = el("div", {class: "across"}), narrow = el("div", {class: "onphone"});
  drawn(wide, r.drawing);
  drawn(narrow, r.narrow || r.drawing);
  return el("section", {class: "planned", "aria-labelledby": `planned-${i}`}, el("h3", {id: `planned-${i}`}, r.name), wide, narrow);
};
