// Texts that the page carries packed: each 13 bits as two of 91 characters, then gzip.
export const unpack = (text) => {
  const gap = text.indexOf(" "), size = Number(text.slice(0, gap));
  const packed = new Uint8Array(size), digit = (i) => { const c = text.charCodeAt(i); return (c === 33 ? 60 : c) - 35; };
  for (let i = gap + 1, at = 0, bits = 0, n = 0; at < size; i += 2) {
    bits |= (digit(i) + 91 * digit(i + 1)) << n;
    for (n += 13; n >= 8 && at < size; n -= 8, bits >>>= 8) packed[at++] = bits;
  }
  return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
};
