// What one takes away: the job file and the files of the plan, made on the device.
import {button, byId, el, toast} from "dom";
import {current, file, put} from "state";
import {ask} from "engine";
import {plan} from "plan";
import * as measure from "measure";

const box = byId("taking");
const types = {html: "text/html", json: "application/json", csv: "text/csv", txt: "text/plain", svg: "image/svg+xml"};

// save gives a file to the browser to keep.
const save = (name, body) => {
  const url = URL.createObjectURL(new Blob([body], {type: types[name.split(".").pop()] + ";charset=utf-8"}));
  el("a", {href: url, download: name}).click();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
};

const show = (body) => open(URL.createObjectURL(new Blob([body], {type: "text/html;charset=utf-8"})));

// says is what each file is.
const says = [
  [/^book\.html$/, "The job book", "All drawings, the cut list, the shopping list and the order of work, to print."],
  [/^templates-/, "Templates", "At full size, to tape on and cut round; print at 100 %."],
  [/^plan\.txt$/, "The plan as text", "The same in plain words."],
  [/^buy\.csv$/, "The shopping list", "For a spreadsheet."],
  [/^cuts\.csv$/, "The cut list", "For a spreadsheet."],
  [/^plan\.json$/, "The plan as data", "Every length exact, for other programs."],
];

const row = (name, title, text, ...buttons) => el("li", {}, el("div", {}, el("b", {}, title), el("code", {}, name), text && el("p", {class: "hint"}, text)), el("div", {class: "row"}, ...buttons));

export const render = async () => {
  const now = plan(), files = el("ul", {class: "files"}), input = el("input", {type: "file", accept: ".json,application/json,text/plain", class: "hidden", id: "opened", tabindex: -1, "aria-hidden": "true",
    onchange: (e) => { if (e.target.files[0]) take(e.target.files[0]); e.target.value = ""; }});
  box.replaceChildren(
    el("h2", {}, "The job"), el("ul", {class: "files"},
      row("job.json", "The job file", "What you measured. Keep it: here it opens again, and the command plans it too.", button("Save the job file", () => save("job.json", file()), {"data-file": "job.json"}), button("Open a job file", () => input.click(), {id: "open"}), input),
      row("measuring-sheet.html", "A measuring sheet", "The same fields in the same order, to print and fill in by hand.", button("Show", () => sheet(show)), button("Save", () => sheet((body) => save("measuring-sheet.html", body)))),
      row("", "A new job", "Empties the form; the job that stands there can be taken back once.", button("Begin a new job", fresh))),
    el("h2", {}, "The plan"), now ? files : el("p", {}, "There is no plan of this job yet. ", el("a", {href: "#plan"}, "Plan it first.")));
  if (!now) return;
  files.append(el("li", {}, "Writing …"));
  const answer = await ask({do: "files", choice: now.taken});
  if (answer.faults) { files.replaceChildren(el("li", {class: "fault"}, answer.faults[0].text)); return; }
  files.replaceChildren(...says.flatMap(([pattern, title, text]) => answer.files.filter((f) => pattern.test(f.name)).map((f) => row(f.name, title, text,
    f.name.endsWith(".html") ? button("Show", () => show(f.body), {"aria-label": `Show ${f.name}`}) : "", button("Save", () => save(f.name, f.body), {"data-file": f.name, "aria-label": `Save ${f.name}`})))));
};

const sheet = async (use) => use((await ask({do: "sheet", runs: Math.min(99, Math.max(1, (current().runs ?? []).length))})).files[0].body);

const replaced = (job, text) => {
  const back = put(job);
  const again = () => { measure.fresh(); measure.render(); render(); };
  again();
  toast(text, () => { back(); again(); });
};

const fresh = () => { replaced(measure.firstJob(), "A new job."); location.hash = "#measure"; };

// take opens a job file, whatever is wrong with the job in it.
const take = async (opened) => {
  const answer = await ask({do: "open", job: await opened.text()});
  if (answer.faults) {
    const f = answer.faults[0];
    toast(`${opened.name} is no job file: ` + (f.line ? `line ${f.line}, column ${f.column}: ` : "") + f.text);
    return;
  }
  replaced(answer.job, `${opened.name} opened.`);
  location.hash = "#measure";
};

addEventListener("dragover", (e) => e.preventDefault());
addEventListener("drop", (e) => { e.preventDefault(); if (e.dataTransfer.files[0]) take(e.dataTransfer.files[0]); });
