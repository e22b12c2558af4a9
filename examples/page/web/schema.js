// The schema of the job file, which says what fields there are and what each takes.
import {byId} from "dom";
import {unpack} from "packed";

export const facts = JSON.parse(new TextDecoder().decode(await unpack(byId("facts").textContent)));

const reference = "#/$defs/";

// resolve follows a reference.
export const resolve = (s) => s.$ref ? {...facts.schema.$defs[s.$ref.slice(reference.length)], description: s.description} : s;

// kind is how a field is typed: length, text, number, yes, words, object, list, either.
export const kind = (s) => {
  if (s.$ref === reference + "length") return "length";
  s = resolve(s);
  if (s.anyOf) return "either";
  if (s.enum) return "words";
  switch (Array.isArray(s.type) ? s.type[0] : s.type) {
  case "boolean": return "yes";
  case "integer": case "number": return "number";
  case "object": return "object";
  case "array": return "list";
  }
  return "text";
};

// keeps reports whether a number is kept as the text that was typed.
export const keeps = (s) => Array.isArray(resolve(s).type);

// at is the schema at a path of the job.
export const at = (path) => path.reduce((s, step) => {
  s = resolve(s);
  if (s.anyOf) s = resolve(s.anyOf[s.anyOf.length - 1]);
  return typeof step === "number" ? s.items : s.properties[step];
}, facts.schema);

// A path is written as the engine writes it: runs[1].heights[0].top.
export const written = (path) => path.map((s, i) => typeof s === "number" ? `[${s}]` : (i ? "." : "") + s).join("");
export const parsed = (text) => (text.match(/[^.[\]]+/g) || []).map((s) => /^\d+$/.test(s) ? Number(s) : s);
