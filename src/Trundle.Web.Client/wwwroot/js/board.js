// The board shows what is so now, without being loaded anew. Without this script it is a page like any other, with its button to look again.
// The vehicles, and the title block that counts them.
const parts = ["#live", ".title-room"];
const line = document.getElementById("live-line");
let fetching = false;
let again = false;

const time = () => new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });

function say(text, away) {
  if (line.textContent !== text) {
    line.textContent = text;
  }
  line.classList.toggle("stops", away);
}

function put(here, fresh) {
  if (!fresh || fresh.innerHTML === here.innerHTML) {
    return;
  }
  // Whoever reads by keyboard stays where they are.
  const at = here.contains(document.activeElement) ? document.activeElement.getAttribute("href") : null;
  here.replaceChildren(...fresh.childNodes);
  if (at) {
    [...here.querySelectorAll("a")].find(a => a.getAttribute("href") === at)?.focus({ preventScroll: true });
  }
}

async function show() {
  if (fetching) {
    again = true;
    return;
  }
  fetching = true;
  try {
    do {
      again = false;
      const answer = await fetch(location.pathname, { headers: { "Cache-Control": "no-cache" } });
      if (answer.redirected) {
        location.reload(); // Nobody is signed in any more.
        return;
      }
      const fresh = answer.ok && new DOMParser().parseFromString(await answer.text(), "text/html");
      for (const part of fresh ? parts : []) {
        put(document.querySelector(part), fresh.querySelector(part));
      }
    } while (again);
    say(line.dataset.live, false);
  } catch {
    away();
  } finally {
    fetching = false;
  }
}

function away() {
  say(`${line.dataset.away} ${line.dataset.since ?? time()}`, true);
}

const events = new EventSource("/board/events");
events.onmessage = () => {
  line.dataset.since = time();
  show();
};
events.onerror = away; // The browser tries again by itself, as long as it is not refused.
setInterval(() => {
  if (events.readyState === EventSource.CLOSED) {
    location.reload();
  }
}, 60000);
