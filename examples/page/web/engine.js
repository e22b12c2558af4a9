// The engine in its worker. Nothing waits for it but what needs its answer.
import {byId} from "dom";

let worker, number = 0;
const waiting = new Map();

const start = () => {
  const source = new Blob([byId("worker").textContent], {type: "text/javascript"});
  worker = new Worker(URL.createObjectURL(source));
  worker.onmessage = ({data}) => {
    if (data.id === 0) { waiting.forEach(({fail}) => fail(new Error(data.failed))); return; }
    const asked = waiting.get(data.id);
    if (!asked) return;
    if (data.failed) asked.fail(new Error(data.failed));
    else if (!data.last) { asked.progress?.(JSON.parse(data.answer)); return; }
    else asked.done(JSON.parse(data.answer));
    waiting.delete(data.id);
  };
  worker.postMessage({engine: byId("engine").textContent.trim()});
};

// ask asks the engine and returns its answer.
export const ask = (request, progress) => new Promise((done, fail) => {
  if (!worker) start();
  waiting.set(++number, {done, fail, progress});
  worker.postMessage({id: number, request: JSON.stringify(request)});
});
