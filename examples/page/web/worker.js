
// The worker unpacks the engine, then answers requests, and "stop" in the middle of a plan.
const unpack = (text) => {
  const gap = text.indexOf(" "), size = Number(text.slice(0, gap));
  const packed = new Uint8Array(size), digit = (i) => { const c = text.charCodeAt(i); return (c === 33 ? 60 : c) - 35; };
  for (let i = gap + 1, at = 0, bits = 0, n = 0; at < size; i += 2) {
    bits |= (digit(i) + 91 * digit(i + 1)) << n;
    for (n += 13; n >= 8 && at < size; n -= 8, bits >>>= 8) packed[at++] = bits;
  }
  const bytes = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
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
