// The page of a bag: where the code on its label leads.

import { button, h, say, sheet } from "./dom.js";
import { showHead, showName } from "./head.js";
import { tell } from "./queue.js";
import { counter } from "./sheets.js";
import { Job } from "./state.js";
import { told } from "./times.js";
import { who } from "./who.js";

export async function showBag(main, name, number) {
  const job = new Job(name);
  const back = { href: `/j/${encodeURIComponent(name)}`, label: "Cards" };
  showHead(`Bag ${number}`, null, back);
  await job.begin();
  let shown = "";

  const telling = async event => {
    const by = await who();
    if (by) {
      showName();
      await tell(name, { kind: "bag", bag: number, by, plan: job.page.cards.revision, ...event });
      say("Told.");
    }
  };
  const countIt = async holds => {
    const counted = await sheet(`Count bag ${number}`, close => {
      const count = counter(holds);
      return [h("p", {}, `${holds} belong in it now.`), count.element, h("div", { class: "choices" }, button("It holds that many", () => close({ count: count.value() }), { class: "main" }))];
    });
    if (counted) {
      await telling(counted);
    }
  };
  const putIt = async () => {
    const place = await sheet(`Where does bag ${number} lie?`, close => {
      const field = h("input", { id: "place", maxlength: 200, autocomplete: "off" });
      return [h("label", { for: "place" }, "Place, such as: shelf 3, left"), field, h("div", { class: "choices" }, button("It lies there", () => field.value.trim() ? close(field.value.trim()) : field.focus(), { class: "main" }))];
    });
    if (place) {
      await telling({ text: place });
    }
  };

  function draw() {
    const bag = job.page?.cards.bags.find(one => one.number === number);
    if (!bag) {
      main.replaceChildren(h("p", { class: "note bad" }, job.page ? `The job has no bag ${number}.` : job.fault ?? "This job was never opened on this tablet, and there is no network to ask for it."));
      return;
    }

    const { cards } = job.page;
    const view = job.view();
    const here = view.bags.find(one => one.number === number);
    const counts = view.told.filter(one => one.kind === "bag" && one.bag === number);
    const place = counts.findLast(one => one.text)?.text ?? here?.where;
    if (shown !== cards.revision) {
      shown = cards.revision;
      showHead(`Bag ${number}${bag.name ? `, ${bag.name}` : ""}`, `${cards.title} · ${cards.machine} · ${cards.serial}`, back);
    }

    main.replaceChildren(
      h("section", { class: "bagpage" },
        h("p", { class: "holds" }, here ? `Holds ${here.count}` : "Empty now"),
        h("p", {}, place ? `Lies: ${place}` : "Nobody has said where it lies."),
        h("ul", { class: "contents" }, bag.contents.map(line => h("li", {},
          h("strong", {}, `${line.count} × ${line.title}`), h("span", {}, line.from), line.inOrder && h("span", {}, "Kept in order: each goes back where it came from."),
          h("small", {}, h("a", { href: `/j/${encodeURIComponent(name)}#step-${line.stripStep}` }, `off at step ${line.stripStep}`),
            line.refitStep > 0 && [", ", h("a", { href: `/j/${encodeURIComponent(name)}#step-${line.refitStep}` }, `back at step ${line.refitStep}`)])))),
        view.closed ? null : h("div", { class: "choices" }, button("Count it", () => countIt(here?.count ?? 0), { class: "main" }), button("Say where it lies", putIt)),
        counts.length > 0 && [h("h2", {}, "What was told of it"), h("ul", { class: "story" }, [...counts].reverse().map(one =>
          h("li", {}, one.count !== undefined ? `Holds ${one.count}` : `Lies ${one.text}`, h("p", { class: "by" }, `${one.by}, ${told(one.at, one.logged)}${one.waits ? ", kept here, sent later" : ""}`))))]));
  }

  draw();
  return {
    async onQueue(of, now) {
      if (of === name && now) {
        await job.stands(now);
      }

      draw();
    },
    async onChange(of) {
      if (of === "" || of === name) {
        await job.load();
        draw();
      }
    },
  };
}
