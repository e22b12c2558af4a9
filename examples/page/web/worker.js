
// The worker unpacks the engine, then answers requests, and "stop" in the middle of a plan.
// unfold puts together new bytes and copies of what stands before them.
const unfold = (folded) => {
  const [size, ...lengths] = new Uint32Array(folded, 0, 4), data = new Uint8Array(folded), all = new Uint8Array(size), at = [16];
  lengths.forEach((length, i) => at.push(at[i] + length));
  const next = (part) => {
    for (let n = 0, shift = 0; ; shift += 7) {
      const byte = data[at[part]++];
      n |= (byte & 127) << shift;
      if (byte < 128) return n;
    }
  };
  for (let to = 0, back = 0; to < size;) {
    for (let n = next(1); n > 0; n--) all[to++] = data[at[0]++];
    if (to < size) {
      back = next(3) || back;
      for (let n = next(2); n > 0; n--, to++) all[to] = all[to - back];
    }
  }
  return all;
};

let ready;
onmessage = async ({data}) => {
  if (data.engine) {
    const go = new Go();
    ready = unpack(data.engine).then((folded) => WebAssembly.instantiate(unfold(folded), go.importObject)).then(({instance}) => { go.run(instance); });
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
