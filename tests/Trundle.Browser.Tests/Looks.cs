namespace Trundle.Browser.Tests;

/// <summary>What is asked of a page in the browser itself; each is a function that the page runs.</summary>
internal static class Looks
{
    /// <summary>What is wider than its room. A table may be moved inside its own room (WCAG 1.4.10 excepts what needs two directions), nothing else may.</summary>
    public const string Overhangs = """
        () => {
          const root = document.documentElement;
          const faults = root.scrollWidth > root.clientWidth ? [`the page by ${root.scrollWidth - root.clientWidth} px`] : [];
          for (const e of document.querySelectorAll("body *")) {
            if (e.closest(".table-room, svg, .unseen, select, textarea, input") || e.clientWidth < 2) continue;
            const style = getComputedStyle(e);
            if (style.clipPath !== "none" || style.position === "absolute") continue;
            if (e.scrollWidth > e.clientWidth + 1 && style.overflowX !== "visible") faults.push(`${e.tagName}.${e.className} by ${e.scrollWidth - e.clientWidth} px`);
            const box = e.getBoundingClientRect();
            if (box.width > 1 && box.height > 1 && box.right > root.clientWidth + 1) faults.push(`${e.tagName}.${e.className} ends at ${Math.round(box.right)}: ${e.textContent.trim().slice(0, 40)}`);
          }
          return faults.slice(0, 6);
        }
        """;

    /// <summary>The height of the window, in px, in which the page's own text moves: less what stays at its foot, or the room that moves inside the sheet.</summary>
    public const string RoomToRead = """
        () => {
          const moved = [...document.querySelectorAll(".sheet .page, .sheet .middle")].filter(e => ["auto", "scroll"].includes(getComputedStyle(e).overflowY));
          const foot = [...document.querySelectorAll(".sheet > .next")].filter(e => getComputedStyle(e).position === "sticky");
          return moved.length === 0 ? innerHeight - Math.max(0, ...foot.map(e => e.clientHeight)) : Math.max(...moved.map(e => e.clientHeight));
        }
        """;

    /// <summary>The spacing that WCAG 1.4.12 names: lines 1.5, paragraphs 2, letters 0.12 and words 0.16 times the size of the type.</summary>
    public const string MoreRoom = """
        () => {
          const style = document.createElement("style");
          style.id = "more-room";
          style.textContent = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }";
          document.head.append(style);
        }
        """;

    /// <summary>What is animated, or would be at a touch.</summary>
    public const string Moving = """
        () => [
          ...document.getAnimations().map(a => `an animation of ${a.effect?.target?.tagName}`),
          ...[...document.querySelectorAll("body, body *")].filter(e => {
            const s = getComputedStyle(e);
            return s.animationName !== "none" || s.transitionDuration.split(",").some(d => parseFloat(d) > 0.01) || s.scrollBehavior === "smooth";
          }).map(e => `${e.tagName}.${e.className}`),
        ].slice(0, 6)
        """;

    /// <summary>Marks all that a hand may use, of each group of radio buttons one, and says how many they are. The focus goes to the top.</summary>
    public const string Reachable = """
        () => {
          const groups = new Set();
          let count = 0;
          for (const e of document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0'], [onclick]")) {
            if (e.disabled || e.type === "hidden" || e.tabIndex < 0 && !e.matches("[onclick]") || !e.checkVisibility({ visibilityProperty: true })) continue;
            if (e.type === "radio") {
              const group = (e.form?.id ?? "") + e.name;
              if (groups.has(group)) continue;
              groups.add(group);
              e.dataset.walk = `radio:${e.name}`;
            } else {
              e.dataset.walk = "one";
            }
            count++;
          }
          window.walked = new Set();
          window.last = null;
          document.activeElement?.blur();
          const top = document.createElement("span");
          top.tabIndex = -1;
          document.body.prepend(top);
          top.focus();
          top.remove();
          return count;
        }
        """;

    /// <summary>What is wrong with where the focus is now: nothing, a fault in words, or "end" when the walk is round.</summary>
    public const string Focused = """
        () => {
          const e = document.activeElement;
          if (!e || e === document.body) return window.walked.size ? "end" : "";
          if (e === window.last) return ""; // A date has a stop for each of its parts.
          if (window.walked.has(e)) return "end";
          window.walked.add(window.last = e);
          const name = `${e.tagName}.${e.className || e.type || ""} ${(e.textContent || e.name || "").trim().slice(0, 30)}`;
          const shown = x => { const s = getComputedStyle(x); return s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2; };
          const holder = [e, e.closest(".choice, .tick, .file")].filter(x => x).find(shown);
          if (!holder) return `${name}: nothing shows the focus`;
          const box = holder.getBoundingClientRect();
          if (box.width < 2 || box.height < 2) return `${name}: has no size`;
          const x = Math.min(Math.max(box.left + Math.min(box.width / 2, 20), 1), innerWidth - 1), y = Math.min(Math.max(box.top + Math.min(box.height / 2, 20), 1), innerHeight - 1);
          if (box.bottom < 1 || box.top > innerHeight - 1 || box.right < 1 || box.left > innerWidth - 1) return `${name}: is outside the window`;
          const over = document.elementFromPoint(x, y);
          return over && (holder.contains(over) || over.contains(holder)) ? "" : `${name}: is covered by ${over?.tagName}.${over?.className}`;
        }
        """;

    /// <summary>What a hand may use and Tab did not come to.</summary>
    public const string NotReached = """
        () => {
          const radios = new Set([...window.walked].filter(e => e.type === "radio").map(e => `radio:${e.name}`));
          return [...document.querySelectorAll("[data-walk]")]
            .filter(e => e.dataset.walk === "one" ? !window.walked.has(e) : !radios.has(e.dataset.walk))
            .map(e => `${e.tagName}.${e.className || e.type} ${(e.textContent || e.name).trim().slice(0, 30)}`).slice(0, 6);
        }
        """;
}
