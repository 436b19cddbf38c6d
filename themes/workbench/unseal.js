// Opens sealed files as they come in, one chunk held at a time (docs/sealed-files.md says what stands in
// them). What is refused is a Refused with the words for it.

const MAGIC = "kerfolio sealed\n";
const [HEAD, LOCK, TAG] = [59, 40, 16]; // bytes of the head before its locks, of a lock, of a chunk's tag
const MOST = { rounds: 10_000_000, chunk: 16 * 1024 * 1024, chunks: 2 ** 32 };

const WORDS_OF_A_KEY = 7;

class Refused extends Error {}

const refuse = (name, values) => {
  throw new Refused(say(`unsealscript-${name}`, values));
};

// A key as typed, in small letters, its words parted by one blank.
const plainKey = (typed) => typed.normalize("NFKC").toLowerCase().replace(/[^a-z]+/g, " ").trim();

// Takes bytes from a stream, as many as are asked for; fewer only where it ends. They may be put into a
// given room, so that no chunk waits to be cleared away while the next one comes.
const taking = (stream) => {
  const reader = stream.getReader();
  let rest = new Uint8Array(0);
  const take = async (count, found = new Uint8Array(count)) => {
    let filled = 0;
    while (filled < count) {
      if (!rest.length) {
        const { done, value } = await reader.read();
        if (done) break;
        rest = value;
      }
      const some = rest.subarray(0, count - filled);
      found.set(some, filled);
      filled += some.length;
      rest = rest.subarray(some.length);
    }
    return found.subarray(0, filled);
  };
  return { take, stop: () => reader.cancel().catch(() => {}) };
};

const joined = (...parts) => new Uint8Array(parts.flatMap((each) => [...each]));
const text = (bytes) => String.fromCharCode(...bytes);

// The head of a sealed file: what opening it takes, but a key.
async function headOf(take) {
  const fixed = await take(HEAD);
  if (text(fixed.subarray(0, MAGIC.length)) !== MAGIC) refuse("none");
  if (fixed.length < HEAD) refuse("short");
  const view = new DataView(fixed.buffer);
  if (view.getUint16(16) !== 1) refuse("version", { version: view.getUint16(16) });
  const [rounds, chunk, size, locks] = [view.getUint32(18), view.getUint32(38), Number(view.getBigUint64(42)), view.getUint16(57)];
  const sound = rounds > 0 && rounds <= MOST.rounds && chunk > 0 && chunk <= MOST.chunk && locks > 0;
  if (!sound || size > chunk * MOST.chunks) refuse("head");
  const wrapped = await take(LOCK * locks);
  if (wrapped.length < LOCK * locks) refuse("short");
  const whole = new Uint8Array(HEAD + wrapped.length);
  whole.set(fixed);
  whole.set(wrapped, HEAD);
  return {
    rounds,
    chunk,
    size,
    salt: fixed.slice(22, 38),
    prefix: fixed.slice(50, 57),
    locks: Array.from({ length: locks }, (_, number) => wrapped.slice(LOCK * number, LOCK * (number + 1))),
    bound: await crypto.subtle.digest("SHA-256", whole),
    chunks: Math.max(1, Math.ceil(size / chunk)),
  };
}

// The content key: the typed key is stretched once, then each lock is tried.
async function contentKey({ salt, rounds, locks }, typed) {
  const words = plainKey(typed);
  if (!words) refuse("empty");
  const base = await crypto.subtle.importKey("raw", new TextEncoder().encode(words), "PBKDF2", false, ["deriveKey"]);
  const how = { name: "PBKDF2", hash: "SHA-256", salt, iterations: rounds };
  const opener = await crypto.subtle.deriveKey(how, base, { name: "AES-KW", length: 256 }, false, ["unwrapKey"]);
  for (const each of locks) {
    try {
      return await crypto.subtle.unwrapKey("raw", each, opener, "AES-KW", "AES-GCM", false, ["decrypt"]);
    } catch (trouble) {
      if (trouble.name !== "OperationError") throw trouble;
    }
  }
  const count = words.split(" ").length;
  return count === WORDS_OF_A_KEY ? refuse("key") : refuse("count", { count });
}

const nonceOf = ({ prefix, chunks }, number) => {
  const counted = new DataView(new ArrayBuffer(5));
  counted.setUint32(0, number);
  counted.setUint8(4, number === chunks - 1 ? 1 : 0);
  return joined(prefix, new Uint8Array(counted.buffer));
};

// Opens what a stream brings. `ready` is asked for a place once the key fits: `write` is given the content
// chunk by chunk, `close` says that it is whole, `abort` that it is not; `tell` hears the share that is done.
async function unseal(stream, typed, ready, tell) {
  const { take, stop } = taking(stream);
  let place = null;
  try {
    const head = await headOf(take);
    const key = await contentKey(head, typed);
    place = await ready(head);
    const room = new Uint8Array(Math.min(head.chunk, head.size) + TAG);
    for (let number = 0; number < head.chunks; number += 1) {
      const length = Math.min(head.chunk, head.size - number * head.chunk) + TAG;
      const part = await take(length, room);
      if (part.length < length) refuse("short");
      const how = { name: "AES-GCM", iv: nonceOf(head, number), additionalData: head.bound };
      const content = await crypto.subtle.decrypt(how, key, part).catch((trouble) => {
        if (trouble.name !== "OperationError") throw trouble;
        refuse("damaged", { number: number + 1, chunks: head.chunks });
      });
      await place.write(content);
      tell((number + 1) / head.chunks);
    }
    if ((await take(1)).length) refuse("longer");
    await place.close();
  } catch (trouble) {
    await stop();
    if (place) await place.abort();
    throw trouble;
  }
}
