// A zip file (APPNOTE 6.3) of files that are stored as they are: pictures do not get smaller by packing, and no picture but the one
// being summed up is ever in memory. Read are stored and deflated files.

const local = 0x04034b50, central = 0x02014b50, end = 0x06054b50;
const longestEnd = 22 + 0xffff;
const largest = 0xffffffff;
const named8 = 0x0800;
/** 1 January 1980, the first day that the format knows: the same log and photos give the same bytes. */
const day = 0x21;

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  for (let bit = 0; bit < 8; bit++) {
    byte = byte & 1 ? (byte >>> 1) ^ 0xedb88320 : byte >>> 1;
  }
  return byte;
});

function sumOf(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum = (sum >>> 8) ^ table[(sum ^ byte) & 0xff];
  }
  return (sum ^ 0xffffffff) >>> 0;
}

/** Numbers, the first of four bytes, those in lists of two. */
function record(...fields) {
  const bytes = new DataView(new ArrayBuffer(fields.reduce((sum, field) => sum + (Array.isArray(field) ? 2 : 4), 0)));
  let at = 0;
  for (const field of fields) {
    Array.isArray(field) ? bytes.setUint16(at, field[0], true) : bytes.setUint32(at, field, true);
    at += Array.isArray(field) ? 2 : 4;
  }
  return bytes.buffer;
}

export async function pack(files) {
  const parts = [], index = [];
  let at = 0;
  for (const { name, blob } of files) {
    const called = new TextEncoder().encode(name);
    const sum = sumOf(new Uint8Array(await blob.arrayBuffer()));
    const common = [[20], [named8], [0], [0], [day], sum, blob.size, blob.size, [called.length], [0]];
    const head = record(local, ...common);
    index.push(record(central, [20], ...common, [0], [0], [0], 0, at), called);
    parts.push(head, called, blob);
    at += head.byteLength + called.length + blob.size;
  }
  const length = index.reduce((sum, part) => sum + part.byteLength, 0);
  if (at + length > largest || files.length > 0xffff) {
    throw new DOMException("", "TooLarge");
  }
  return new Blob([...parts, ...index, record(end, [0], [0], [files.length], [files.length], length, at, [0])], { type: "application/zip" });
}

/** The files in a pack, each with what gives its content. */
export async function unpack(zip) {
  const tail = await view(zip, Math.max(0, zip.size - longestEnd), zip.size);
  let at = tail.byteLength - 22;
  while (at >= 0 && tail.getUint32(at, true) !== end) {
    at--;
  }
  if (at < 0) {
    throw new DOMException("", "DataError");
  }
  const from = tail.getUint32(at + 16, true);
  const index = await view(zip, from, from + tail.getUint32(at + 12, true));
  const files = [];
  for (let next = 0; next + 46 <= index.byteLength && index.getUint32(next, true) === central;) {
    const [name, extra, remark] = [28, 30, 32].map((field) => index.getUint16(next + field, true));
    files.push({
      name: new TextDecoder().decode(new Uint8Array(index.buffer, next + 46, name)),
      blob: content(zip, index.getUint16(next + 10, true), index.getUint32(next + 20, true), index.getUint32(next + 42, true)),
    });
    next += 46 + name + extra + remark;
  }
  return files;
}

function content(zip, method, length, at) {
  return async () => {
    const head = await view(zip, at, at + 30);
    const from = at + 30 + head.getUint16(26, true) + head.getUint16(28, true);
    const packed = zip.slice(from, from + length);
    if (method !== 0 && method !== 8) {
      throw new DOMException("", "DataError");
    }
    return method === 0 ? packed : new Response(packed.stream().pipeThrough(new DecompressionStream("deflate-raw"))).blob();
  };
}

async function view(blob, from, to) {
  return new DataView(await blob.slice(from, to).arrayBuffer());
}
