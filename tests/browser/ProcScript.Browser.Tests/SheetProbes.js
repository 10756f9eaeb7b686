// Marks the beginning and the end of what must not be parted, so that the words of the printed sheets tell where it came to lie.
// A mark stands outside the flow: it moves nothing.
() => {
  const shown = element => element && element.getClientRects().length > 0;
  const inner = (element, side) => {
    const child = side === "first" ? element.firstElementChild : element.lastElementChild;
    return child && shown(child) && getComputedStyle(child).display !== "grid" && !/^(INPUT|TEXTAREA|svg|LABEL|BR)$/.test(child.tagName) ? inner(child, side) : element;
  };
  // Marks are set when all their places are known: to look for a place behind each of them would lay the pack out anew every time.
  const marks = [];
  const mark = (element, text, side) => marks.push({ place: inner(element, side), text, side });
  const set = ({ place, text, side }) => {
    const made = document.createElement("span");
    made.textContent = text;
    Object.assign(made.style, { position: "absolute", font: "1px sans-serif", color: "#ccc", display: "block" });
    if (side === "first") place.prepend(made);
    else {
      // It would stand below the last line, and there another sheet may begin.
      made.style.marginTop = "-3px";
      place.append(made);
    }
  };

  // What announces, with what it announces: the nearest thing shown behind it.
  const after = element => {
    for (let at = element; at; at = at.parentElement) {
      for (let next = at.nextElementSibling; next; next = next.nextElementSibling) {
        if (next.tagName !== "COLGROUP" && shown(next)) return next;
      }
    }
    return null;
  };

  const rows = [...document.querySelectorAll(".step .action, .alert, .return, .left-out tr, .list tbody tr, .ticks li, .sequence li, .sign tbody tr")].filter(shown);
  const heads = [...document.querySelectorAll("h1, h2, h3, caption, thead, .standing, .before:not(.list-before)")].filter(head => shown(head) && !head.closest(".hide"));
  const followers = heads.map(after);
  rows.forEach((row, at) => {
    const cells = row.tagName === "TR" ? [...row.cells] : [row];
    mark(cells[0], `r${at}a`, "first");
    cells.forEach(cell => mark(cell, `r${at}z`, "last"));
  });
  heads.forEach((head, at) => {
    const follower = followers[at];
    if (!follower) return;
    mark(head.tagName === "THEAD" || head.tagName === "TBODY" ? head.rows[0].cells[0] : head.tagName === "TR" ? head.cells[0] : head, `h${at}a`, "last");
    mark(follower.matches("thead, tbody, table") ? (follower.tagName === "TABLE" ? follower.rows[0] : follower.rows[0]).cells[0] : follower.tagName === "TR" ? follower.cells[0] : follower, `h${at}z`, "first");
  });
  const words = element => element.textContent.replace(/\s+/g, " ").trim().slice(0, 60);
  const marked = { rows: rows.map(words), heads: heads.map(words) };
  marks.forEach(set);
  return marked;
}
