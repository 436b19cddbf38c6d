// Opens the plan's sealed bundle on its page and saves it. Of the key nothing leaves the page. It looks only
// inside the element it stands in, and fetches the sealed file alone.

const place = document.currentScript.parentElement;
const [form, told, done] = ["form", "output", "progress"].map((each) => place.querySelector(each));
const [field, button] = [form.elements.key, form.querySelector("button")];
const { sealed, name } = form.dataset;

const KIND = "application/zip";

// A file that the reader names, where the browser offers that: it holds nothing until all of it is whole.
// None where it does not, false where he named none.
async function named() {
  if (!window.showSaveFilePicker) return null;
  try {
    const handle = await window.showSaveFilePicker({ suggestedName: name });
    const file = await handle.createWritable();
    const abort = async () => {
      await file.abort();
      if (handle.remove && !(await handle.getFile()).size) await handle.remove();
    };
    return { write: (content) => file.write(content), close: () => file.close(), abort };
  } catch (trouble) {
    if (trouble.name === "AbortError") return false;
    if (trouble.name === "SecurityError") return null; // asked for too long after the click
    throw trouble;
  }
}

// A file among the browser's downloads: what came in is kept as blobs, which it may keep on disk.
function downloaded() {
  let parts = [];
  return {
    write: (content) => parts.push(new Blob([content])),
    close: () => {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob(parts, { type: KIND }));
      link.download = name;
      place.append(link);
      link.click();
      link.remove();
      setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    },
    abort: () => {
      parts = [];
    },
  };
}

class Unnamed extends Error {}

async function placeFor() {
  const found = await named();
  if (found === false) throw new Unnamed();
  return found || downloaded();
}

// What went wrong in words; whatever no sentence is for is told as the browser tells it.
function wordsFor(trouble) {
  if (trouble instanceof Refused) return trouble.message;
  if (trouble instanceof Unnamed) return say("unsealscript-unnamed");
  return say("unsealscript-trouble", { trouble: trouble.message || trouble.name });
}

async function fetched() {
  const answer = await fetch(sealed).catch(() => null);
  if (!answer || !answer.ok || !answer.body) refuse("fetched");
  return answer.body;
}

async function open() {
  if (!plainKey(field.value)) refuse("empty");
  await unseal(await fetched(), field.value, placeFor, (share) => {
    done.hidden = false;
    done.value = share;
  });
}

const busy = (is) => {
  button.disabled = is;
  form.setAttribute("aria-busy", String(is));
  if (!is) done.hidden = true;
};

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  if (button.disabled) return;
  busy(true);
  field.removeAttribute("aria-invalid");
  told.textContent = say("unsealscript-opening");
  try {
    await open();
    told.textContent = say("unsealscript-saved", { name });
  } catch (trouble) {
    told.textContent = wordsFor(trouble);
    field.setAttribute("aria-invalid", "true");
  }
  busy(false);
  if (field.getAttribute("aria-invalid")) field.focus();
});

const barred = location.protocol === "file:" ? "disk" : globalThis.crypto?.subtle ? "" : "plain";
if (barred) told.textContent = say(`unsealscript-${barred}`);
form.hidden = Boolean(barred);
