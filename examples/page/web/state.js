// The job as it stands, kept on this device, with a way back.

const place = "groovewright job";
let job = {};
let listeners = [];

export const current = () => job;
export const onChange = (f) => listeners.push(f);

// changed saves the job and says so to all who want to know.
export const changed = () => {
  try { localStorage.setItem(place, JSON.stringify(job)); } catch { /* a browser without storage keeps it while the page is open */ }
  listeners.forEach((f) => f());
};

export const get = (path) => path.reduce((v, step) => v === undefined || v === null ? undefined : v[step], job);

// set puts a value at a path and makes what is missing on the way; undefined takes it away.
export const set = (path, value) => {
  let v = job;
  path.slice(0, -1).forEach((step, i) => {
    if (typeof v[step] !== "object" || v[step] === null) v[step] = typeof path[i + 1] === "number" ? [] : {};
    v = v[step];
  });
  const last = path[path.length - 1];
  if (value !== undefined) v[last] = value;
  else if (Array.isArray(v)) v.splice(last, 1);
  else delete v[last];
  changed();
};

// put takes another job in place of this one and returns the way back.
export const put = (other) => {
  const before = JSON.stringify(job);
  job = other;
  changed();
  return () => put(JSON.parse(before));
};

// snapshot returns the way back to the job as it is now.
export const snapshot = () => { const before = JSON.stringify(job); return () => put(JSON.parse(before)); };

// load takes the job that was kept, or a first one.
export const load = (first) => {
  try { job = JSON.parse(localStorage.getItem(place)); } catch { job = null; }
  if (typeof job !== "object" || job === null || Array.isArray(job)) job = first;
};

// clean drops what holds nothing: empty texts, lists and objects, but no item of a list and no list
// of features, which says that there are none.
const clean = (v, name) => {
  if (Array.isArray(v)) return v.length || name === "features" ? v.map((x) => clean(x) ?? (Array.isArray(x) ? [] : typeof x === "object" ? {} : "")) : undefined;
  if (typeof v === "string") return v.trim() === "" ? undefined : v;
  if (typeof v !== "object" || v === null) return v ?? undefined;
  const parts = Object.entries(v).map(([key, x]) => [key, clean(x, key)]).filter(([, x]) => x !== undefined);
  return parts.length ? Object.fromEntries(parts) : undefined;
};

// file is the job file of the job.
export const file = () => JSON.stringify(clean(job) ?? {}, null, 2) + "\n";
