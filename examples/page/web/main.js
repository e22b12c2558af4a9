// Where the page begins: the job that was kept, and the step that is open.
import {byId} from "dom";
import {load} from "state";
import {ask} from "engine";
import * as measure from "measure";
import * as plan from "plan";
import * as take from "take";

const steps = {measure: () => {}, plan: plan.render, take: take.render};

const go = (focus) => {
  const step = location.hash.slice(1) in steps ? location.hash.slice(1) : location.hash === "" || focus !== true ? "measure" : undefined;
  if (!step) return; // the way past the header
  for (const name of Object.keys(steps)) byId(name).hidden = name !== step;
  for (const link of document.querySelectorAll("nav a")) {
    if (link.hash === "#" + step) link.setAttribute("aria-current", "step"); else link.removeAttribute("aria-current");
  }
  steps[step]();
  document.body.dataset.step = step;
  if (focus) { scrollTo(0, 0); byId("main").focus({preventScroll: true}); }
};

load(measure.firstJob());
measure.render(); // a module runs after the whole page is read
addEventListener("hashchange", () => go(true));
go(false);
ask({do: "warm"}).then(() => { document.body.dataset.warm = "yes"; }, () => {}); // the first check says so where the engine does not start
