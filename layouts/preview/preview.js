// Brings the open page to what was saved last, in place: only what is different in the new page is touched, so that scrolling, focus,
// ticks and whatever the page's own script has done stay. When that is done the document gets the event "renewed".
(() => {
  "use strict";
  const band = document.getElementById("~band");
  const twin = new WeakMap(); // of a node that was served, the one that is shown
  let served = document.body.cloneNode(true); // before the page's own scripts change anything
  let servedBand, stream, newest = 0, touched;

  const pair = (shown, was) => {
    twin.set(was, shown);
    was.childNodes.forEach((child, i) => shown.childNodes[i] && pair(shown.childNodes[i], child));
  };
  const handOn = (was, is) => {
    if (twin.has(was)) twin.set(is, twin.get(was));
    was.childNodes.forEach((child, i) => handOn(child, is.childNodes[i]));
  };
  const alike = (a, b) => a.nodeType === b.nodeType && a.nodeName === b.nodeName && (a.id || "") === (b.id || "");
  const same = (a, b) => a.id !== "~band" && a.isEqualNode(b);

  function patch(was, is) {
    if (is.id === "~band") return patchBand(is);
    if (same(was, is)) return handOn(was, is);
    const shown = twin.get(was);
    if (!shown) return;
    twin.set(is, shown);
    if (is.nodeType !== Node.ELEMENT_NODE) {
      shown.data = is.data;
      touched.add(shown.parentElement);
      return;
    }
    patchAttributes(shown, was, is);
    patchChildren(shown, was, is);
  }

  // Only what was served otherwise before is changed: what somebody opened or a script has set stays.
  function patchAttributes(shown, was, is) {
    for (const { name, value } of is.attributes) if (was.getAttribute(name) !== value) shown.setAttribute(name, value);
    for (const { name } of was.attributes) if (!is.hasAttribute(name)) shown.removeAttribute(name);
  }

  function patchChildren(shown, was, is) {
    const old = [...was.childNodes], now = [...is.childNodes];
    let head = 0, tail = 0;
    while (head < old.length && head < now.length && same(old[head], now[head])) handOn(old[head], now[head++]);
    while (tail < old.length - head && tail < now.length - head && same(old.at(-1 - tail), now.at(-1 - tail))) handOn(old.at(-1 - tail), now.at(-1 - tail++));
    const left = old.slice(head, old.length - tail);
    const end = tail ? old[old.length - tail] : null;
    let at = 0;
    for (const node of now.slice(head, now.length - tail)) {
      const found = left.findIndex((n, i) => i >= at && alike(n, node));
      if (found < 0) {
        const come = document.importNode(node, true);
        pair(come, node);
        const next = twin.get(left[at] || end);
        shown.insertBefore(come, next && next.parentNode === shown ? next : null);
        touched.add(come.nodeType === Node.ELEMENT_NODE ? come : shown);
        continue;
      }
      for (; at < found; at++) twin.get(left[at])?.remove();
      patch(left[at++], node);
    }
    for (; at < left.length; at++) twin.get(left[at])?.remove();
  }

  function patchBand(is) {
    const next = is.querySelector("template").content;
    band.dataset.etag = is.dataset.etag;
    patchChildren(band.shadowRoot, servedBand, next);
    servedBand = next;
  }

  // A new style is there before the old one goes, so that the page is never without. False: this is another page, to be loaded anew.
  function patchHead(now) {
    const scripts = (d) => [...d.head.querySelectorAll("script[src]")].map((s) => s.getAttribute("src")).join();
    if (scripts(document) !== scripts(now) || served.classList.contains("own") !== now.body.classList.contains("own")) return false;
    document.title = now.title;
    const old = [...document.head.querySelectorAll("link[rel=stylesheet]")];
    const styles = [...now.head.querySelectorAll("link[rel=stylesheet]")];
    for (const link of styles) {
      if (old.some((o) => o.getAttribute("href") === link.getAttribute("href"))) continue;
      const come = document.importNode(link, true);
      const gone = old.filter((o) => !styles.some((s) => s.getAttribute("href") === o.getAttribute("href")));
      come.addEventListener("load", () => gone.forEach((o) => o.remove()));
      document.head.append(come);
    }
    const inline = document.head.querySelector("style"), other = now.head.querySelector("style");
    if (inline && other && inline.textContent !== other.textContent) inline.textContent = other.textContent;
    return true;
  }

  async function renew() {
    const mine = ++newest;
    let text;
    try {
      text = await (await fetch(location.pathname, { cache: "no-store" })).text();
    } catch {
      return cut();
    }
    if (mine !== newest) return;
    const now = new DOMParser().parseFromString(text, "text/html");
    if (!now.getElementById("~band")) return;
    if (!patchHead(now)) return location.reload();
    touched = new Set();
    patchAttributes(document.body, served, now.body);
    patchChildren(document.body, served, now.body);
    served = now.body;
    twin.set(served, document.body);
    show();
    document.dispatchEvent(new CustomEvent("renewed"));
  }

  // Shows for a moment where the page is another.
  function show() {
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) return;
    for (const element of touched) {
      if (element?.getRootNode() === document && element !== document.body) element.animate([{ outline: "3px solid #d9a400" }, { outline: "3px solid transparent" }], 1500);
    }
  }

  const cut = () => band.setAttribute("data-cut", "");
  function listen() {
    stream?.close();
    if (document.hidden) return; // a browser has few connections to one host; a page that nobody sees can wait
    stream = new EventSource("/~/changes?of=" + encodeURIComponent(location.pathname));
    stream.onmessage = ({ data }) => {
      band.removeAttribute("data-cut");
      if (data !== band.dataset.etag) renew();
    };
    stream.onerror = cut;
  }

  if (!band.shadowRoot) {
    band.attachShadow({ mode: "open" }).append(band.querySelector("template").content.cloneNode(true));
    band.querySelector("template").remove();
  }
  servedBand = document.createDocumentFragment();
  servedBand.append(...[...band.shadowRoot.childNodes].map((n) => n.cloneNode(true)));
  servedBand.childNodes.forEach((n, i) => pair(band.shadowRoot.childNodes[i], n));
  pair(document.body, served);
  if (window !== top) band.hidden = true;
  document.addEventListener("visibilitychange", listen);
  addEventListener("pagehide", () => stream?.close());
  addEventListener("pageshow", (e) => e.persisted && listen());
  listen();
})();
