// Runs before the terminal's own script: decides what that may reach, and makes paste, copy and focus work.
"use strict";

(() => {
  const LONGEST_PASTE = 200000;
  const IDLE = "Ctrl+V pastes, Ctrl+Y copies the question. Alt+N notes.";
  const WHY = {
    4000: "The desk was left. What was said is kept.",
    4001: "The desk was opened in another window of this browser and went on there.",
    4002: "You are signed out. Open the desk to sign in again.",
    4003: "The server has been stopped. What was said is kept.",
    4004: "The connection was closed because of a message that this page should not send.",
  };
  const LOST = "The connection is lost. What was said is kept; the desk goes on where it stopped.";
  let socket = null;

  const find = (id) => document.getElementById(id);
  const keys = () => document.querySelector(".xterm-helper-textarea");
  const send = (message) => {
    if (socket && socket.readyState === 1) socket.send(JSON.stringify(message));
  };
  const say = (words) => {
    find("told").textContent = words;
    setTimeout(() => { find("told").textContent = IDLE; }, 6000);
  };
  const focus = () => {
    const line = keys();
    if (!line || !find("refused").hidden || !find("over").hidden) return;
    line.focus();
    if (document.hasFocus()) send(["focus"]);
  };

  // The terminal's socket, seen from here. The program starts as one out of focus, at a moment that cannot be seen:
  // so it is told with each of its first frames.
  const Plain = window.WebSocket;
  window.WebSocket = class extends Plain {
    constructor(...given) {
      super(...given);
      socket = this;
      const opened = Date.now();
      this.addEventListener("message", () => { if (Date.now() - opened < 5000) focus(); });
      setTimeout(focus, 5000);
      this.addEventListener("close", (event) => {
        find("why").textContent = WHY[event.code] || LOST;
        find("over").hidden = false;
        find("again").focus();
      });
    }
  };

  // An address in a visitor's words stays words: the terminal would open it at a click.
  window.open = () => null;

  // Copying: the program's order reaches navigator.clipboard, which is missing without TLS and may be refused.
  const native = navigator.clipboard;
  const oldWay = (words) => {
    const line = document.createElement("textarea");
    line.value = words;
    document.body.append(line);
    line.select();
    const copied = document.execCommand("copy");
    line.remove();
    focus();
    return copied;
  };
  const copy = async (words) => {
    try {
      await native.writeText(words);
      say("Copied.");
    } catch {
      if (oldWay(words)) {
        say("Copied.");
        return;
      }
      find("words").value = words;
      find("refused").hidden = false;
      find("words").select();
    }
  };
  Object.defineProperty(navigator, "clipboard", { value: { writeText: copy, readText: async () => "" } });

  // Pasting: all of it as one piece of text. Codes in it would end the piece early, and the rest would be keys.
  document.addEventListener("paste", (event) => {
    event.preventDefault();
    event.stopImmediatePropagation();
    const words = (event.clipboardData ? event.clipboardData.getData("text/plain") : "").slice(0, LONGEST_PASTE)
      .replace(/\r\n?/g, "\n").replace(/(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]/g, "").replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g, "").replace(/\n/g, "\r");
    if (words) send(["stdin", "\u001b[200~" + words + "\u001b[201~"]);
  }, true);

  window.addEventListener("keydown", (event) => {
    const inTerminal = event.target === keys();
    const letter = event.key.length === 1 ? event.key.toLowerCase() : "";
    if (inTerminal && ((event.ctrlKey && !event.altKey && letter === "v") || (event.shiftKey && event.key === "Insert"))) {
      event.stopImmediatePropagation(); // the browser pastes
    } else if (inTerminal && event.altKey && !event.ctrlKey && !event.metaKey && /^[nw]$/.test(letter)) {
      event.preventDefault(); // some Ctrl+letter keys never leave the browser
      event.stopImmediatePropagation();
      send(["stdin", String.fromCharCode(letter.charCodeAt(0) - 96)]);
    }
  }, true);

  window.addEventListener("focus", focus);
  document.addEventListener("DOMContentLoaded", () => {
    const scheme = location.protocol === "https:" ? "wss:" : "ws:";
    find("terminal").dataset.sessionWebsocketUrl = scheme + "//" + location.host + "/ws";
    find("again").addEventListener("click", () => location.replace("/"));
    find("done").addEventListener("click", () => { find("refused").hidden = true; focus(); });
  });
})();
