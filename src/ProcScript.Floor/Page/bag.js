// The page of a bag: where the code on its label leads.

import { button, h, say, sheet } from "./dom.js";
import { showHead, showName } from "./head.js";
import { tell } from "./queue.js";
import { counter } from "./sheets.js";
import { Job } from "./state.js";
import { told } from "./times.js";
import { who } from "./who.js";
import { phrase } from "./words.js";

export async function showBag(main, name, number) {
  const job = new Job(name);
  const back = { href: `/j/${encodeURIComponent(name)}`, label: phrase("head.cards") };
  showHead(phrase("bag.title", { number }), null, back);
  await job.begin();
  let shown = "";

  const telling = async event => {
    const by = await who();
    if (by) {
      showName();
      await tell(name, { kind: "bag", bag: number, by, plan: job.page.cards.revision, ...event });
      say(phrase("told"));
    }
  };
  const countIt = async holds => {
    const counted = await sheet(phrase("bag.count", { number }), close => {
      const count = counter(holds);
      return [h("p", {}, phrase("bag.belong", { count: holds })), count.element, h("div", { class: "choices" }, button(phrase("bag.holds-that"), () => close({ count: count.value() }), { class: "main" }))];
    });
    if (counted) {
      await telling(counted);
    }
  };
  const putIt = async () => {
    const place = await sheet(phrase("bag.where", { number }), close => {
      const field = h("input", { id: "place", maxlength: 200, autocomplete: "off" });
      return [h("label", { for: "place" }, phrase("bag.place")), field, h("div", { class: "choices" }, button(phrase("bag.lies-there"), () => field.value.trim() ? close(field.value.trim()) : field.focus(), { class: "main" }))];
    });
    if (place) {
      await telling({ text: place });
    }
  };

  function draw() {
    const bag = job.page?.cards.bags.find(one => one.number === number);
    if (!bag) {
      main.replaceChildren(h("p", { class: "note bad" }, job.page ? phrase("bag.no-such", { number }) : job.fault ?? phrase("never-opened")));
      return;
    }

    const { cards } = job.page;
    const view = job.view();
    const here = view.bags.find(one => one.number === number);
    const counts = view.told.filter(one => one.kind === "bag" && one.bag === number);
    const place = counts.findLast(one => one.text)?.text ?? here?.where;
    if (shown !== cards.revision) {
      shown = cards.revision;
      showHead(bag.name ? phrase("bag.named", { number, name: bag.name }) : phrase("bag.title", { number }), `${cards.title} · ${cards.machine} · ${cards.serial}`, back);
    }

    main.replaceChildren(
      h("section", { class: "bagpage" },
        h("p", { class: "holds" }, here ? phrase("bag.holds", { count: here.count }) : phrase("bag.empty")),
        h("p", {}, place ? phrase("bag.lies", { where: place }) : phrase("bag.nobody-said")),
        h("ul", { class: "contents" }, bag.contents.map(line => h("li", {},
          h("strong", {}, `${line.count} × ${line.title}`), h("span", {}, line.from), line.inOrder && h("span", {}, phrase("bag.in-order")),
          h("small", {}, h("a", { href: `/j/${encodeURIComponent(name)}#step-${line.stripStep}` }, phrase("bag.off-at", { number: line.stripStep })),
            line.refitStep > 0 && [", ", h("a", { href: `/j/${encodeURIComponent(name)}#step-${line.refitStep}` }, phrase("bag.back-at", { number: line.refitStep }))])))),
        view.closed ? null : h("div", { class: "choices" }, button(phrase("bag.count-it"), () => countIt(here?.count ?? 0), { class: "main" }), button(phrase("bag.say-where"), putIt)),
        counts.length > 0 && [h("h2", {}, phrase("bag.told")), h("ul", { class: "story" }, [...counts].reverse().map(one =>
          h("li", {}, one.count !== undefined ? phrase("bag.holds", { count: one.count }) : phrase("bag.lies", { where: one.text }), h("p", { class: "by" }, `${one.by}, ${told(one.at, one.logged)}${one.waits ? `, ${phrase("kept-here")}` : ""}`))))]));
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
