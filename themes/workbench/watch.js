// Follows what is saved: takes the page in anew, shows lines of files beside it.
"use strict";

const panel = () => document.getElementById("lines");

async function page(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(String(answer.status));
  return new DOMParser().parseFromString(await answer.text(), "text/html");
}

async function takeIn() {
  const found = await page(location.pathname);
  const open = new Map();
  for (const each of document.querySelectorAll("details[data-keep]")) open.set(each.dataset.keep, each.open);
  const shown = panel();
  const before = document.querySelector("iframe.readers");
  const [old, fresh] = [document.querySelector("main"), found.querySelector("main")];
  if (before && fresh.querySelector("iframe.readers")) {
    old.querySelector(".doing").replaceWith(fresh.querySelector(".doing"));
    const [was, is] = [old.querySelector(".watched"), fresh.querySelector(".watched")];
    if (was.dataset.sites !== is.dataset.sites) before.contentWindow.location.reload();
    was.dataset.sites = is.dataset.sites;
    return;
  }
  old.replaceWith(document.adoptNode(fresh));
  for (const each of document.querySelectorAll("details[data-keep]"))
    if (open.has(each.dataset.keep)) each.open = open.get(each.dataset.keep);
  if (shown && panel()) panel().replaceWith(shown);
  markNames();
}

function markNames() {
  for (const text of document.querySelectorAll("[data-named] svg text"))
    if (linkOf(text)) text.classList.add("names-a-feature");
}

// A drawing bears the names of features: a click on one is a click on its link below.
function linkOf(text) {
  const name = text.textContent.split(":")[0].split(" ")[0];
  const links = text.closest("article").querySelectorAll("a[data-feature]");
  return [...links].find((each) => each.dataset.feature === name);
}

async function showLines(address) {
  const found = await page(address);
  const close = document.createElement("button");
  close.textContent = "Close";
  close.addEventListener("click", () => { panel().hidden = true; });
  panel().replaceChildren(document.adoptNode(found.getElementById("excerpt")), close);
  panel().hidden = false;
}

document.addEventListener("click", (event) => {
  const text = event.target.closest("text.names-a-feature");
  const link = text ? linkOf(text) : event.target.closest("a[data-lines]");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  showLines(link.href).catch(() => location.assign(link.href));
});

document.addEventListener("submit", (event) => {
  event.preventDefault();
  fetch(event.target.action, { method: "POST", body: new URLSearchParams(new FormData(event.target)) });
});

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && panel()) panel().hidden = true;
});

if (document.querySelector(".watched")) {
  markNames();
  let shown = document.querySelector(".watched").dataset.version;
  const events = new EventSource("/events");
  events.addEventListener("message", (event) => {
    if (event.data === shown) return;
    shown = event.data;
    takeIn().catch(() => location.reload());
  });
}
