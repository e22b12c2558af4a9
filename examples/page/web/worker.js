
// The worker unpacks the engine, then answers requests, and "stop" in the middle of a plan.
const unpack = (text) => {
  const gap = text.indexOf(" "), size = Number(text.slice(0, gap));
  const packed = new Uint8Array(Math.ceil(size / 4) * 4), view = new DataView(packed.buffer);
  const digit = (i) => { const c = text.charCodeAt(i); return c === 33 ? 20 : c - 40; };
  for (let i = gap + 1, at = 0; at < size; i += 5, at += 4) {
    view.setUint32(at, (((digit(i) * 85 + digit(i + 1)) * 85 + digit(i + 2)) * 85 + digit(i + 3)) * 85 + digit(i + 4));
  }
  const bytes = new Blob([packed.subarray(0, size)]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(bytes, {headers: {"Content-Type": "application/wasm"}});
};

let ready;
onmessage = async ({data}) => {
  if (data.engine) {
    const go = new Go();
    ready = WebAssembly.instantiateStreaming(unpack(data.engine), go.importObject).then(({instance}) => { go.run(instance); });
    ready.catch((error) => postMessage({id: 0, failed: String(error)}));
    return;
  }
  try {
    await ready;
    groovewright(data.request, (answer, last) => postMessage({id: data.id, answer, last}));
  } catch (error) {
    postMessage({id: data.id, failed: String(error)});
  }
};
