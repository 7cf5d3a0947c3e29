// Follows the rulebook: when it was read anew, the page that is shown is fetched again, and what has changed is put in.
// Without script everything works but this.
"use strict";

(() => {
  const same = (a, b) => a.isEqualNode(b);

  // What is open stays open, and what was opened by hand counts more than what the page says.
  const remember = (root) => {
    const open = new Map();
    for (const details of root.querySelectorAll("details[data-keep]")) {
      open.set(details.dataset.keep, details.open);
    }
    return open;
  };

  const restore = (root, open) => {
    for (const details of root.querySelectorAll("details[data-keep]")) {
      if (open.get(details.dataset.keep)) details.open = true;
    }
  };

  // The first part that is seen stays where it is on the screen.
  const anchor = () => {
    for (const part of document.querySelectorAll("main [data-part]")) {
      const box = part.getBoundingClientRect();
      if (box.bottom > 0 && part.id) return { id: part.id, top: box.top };
    }
    return null;
  };

  const keepPlace = (was) => {
    const part = was && document.getElementById(was.id);
    if (part) window.scrollBy(0, part.getBoundingClientRect().top - was.top);
  };

  const put = (old, fresh) => {
    if (same(old, fresh)) return;
    old.replaceWith(document.adoptNode(fresh));
  };

  // A list of parts: those at its ends that are the same stay, those between are replaced.
  const putList = (old, fresh) => {
    const before = [...old.children];
    const after = [...fresh.children];
    let head = 0;
    while (head < before.length && head < after.length && same(before[head], after[head])) head += 1;
    let tail = 0;
    while (
      tail < before.length - head && tail < after.length - head &&
      same(before[before.length - 1 - tail], after[after.length - 1 - tail])
    ) tail += 1;
    const next = before[before.length - tail] || null;
    for (const part of before.slice(head, before.length - tail)) part.remove();
    for (const part of after.slice(head, after.length - tail)) old.insertBefore(document.adoptNode(part), next);
  };

  const take = (page) => {
    const open = remember(document);
    for (const details of document.querySelectorAll("details[data-keep]")) details.removeAttribute("open");
    for (const details of page.querySelectorAll("details[data-keep][open]")) {
      if (!open.has(details.dataset.keep)) open.set(details.dataset.keep, true);
      if (details.closest("[data-part]").querySelector(".problem")) open.set(details.dataset.keep, true);
    }
    for (const details of page.querySelectorAll("details[data-keep]")) details.removeAttribute("open");
    const place = anchor();
    const focused = document.activeElement && document.activeElement.id;
    for (const list of document.querySelectorAll("[data-list]")) {
      const fresh = page.getElementById(list.id);
      if (fresh) putList(list, fresh);
    }
    for (const part of document.querySelectorAll("[data-part]")) {
      if (part.closest("[data-list]")) continue;
      const fresh = page.getElementById(part.id);
      if (fresh) put(part, fresh);
    }
    document.title = page.title;
    restore(document, open);
    keepPlace(place);
    const again = focused && document.getElementById(focused);
    if (again && document.activeElement !== again) again.focus({ preventScroll: true });
  };

  let shown = null;
  let fetching = false;
  let behind = false;

  const refresh = async () => {
    if (fetching) {
      behind = true;
      return;
    }
    fetching = true;
    do {
      behind = false;
      try {
        const answer = await fetch(location.href, { cache: "no-store" });
        if ((answer.headers.get("content-type") || "").startsWith("text/html")) {
          take(new DOMParser().parseFromString(await answer.text(), "text/html"));
          document.documentElement.dataset.reading = shown;
        }
      } catch {
        // The desk has ended, or is starting again: the stream tells.
      }
    } while (behind);
    fetching = false;
  };

  let stream = null;

  const listen = () => {
    if (stream) return;
    stream = new EventSource("/events");
    stream.addEventListener("reading", (event) => {
      const first = shown === null;
      const changed = shown !== event.data;
      shown = event.data;
      if (first && document.documentElement.dataset.reading === event.data) return;
      if (changed) refresh();
    });
    stream.addEventListener("error", () => document.documentElement.classList.add("ended"));
    stream.addEventListener("open", () => document.documentElement.classList.remove("ended"));
  };

  // A page that isn't seen doesn't hold a connection: a browser has only a few for an address.
  const follow = () => {
    if (document.visibilityState === "visible") {
      listen();
    } else if (stream) {
      stream.close();
      stream = null;
    }
  };

  document.addEventListener("visibilitychange", follow);
  follow();
})();
