(() => {
  "use strict";

  // Every local file shares one store: the key keeps jobs, variants and revisions apart, and the records of one pack.
  const { job, variant, revision } = document.body.dataset;
  const anyRecord = "procscript record: ";
  const prefix = `${anyRecord}${job} / ${variant.trim()} / ${revision} / `;
  const form = "procscript record 1";
  // A page that is loaded again within a shift goes on by itself; later it may stand beside the next machine, and asks.
  const shift = 8 * 3600 * 1000;
  const fields = new Map(Array.from(document.querySelectorAll("[data-field]"), field => [field.dataset.field, field]));
  const steps = Array.from(document.querySelectorAll("input.main"));
  const said = document.querySelector(".said");
  const meter = document.querySelector(".bar progress");
  const count = document.querySelector(".bar .count");
  const of = document.querySelector(".bar .of");
  const dialog = document.querySelector("dialog.record");
  const names = { serial: dialog.querySelector("[data-do=serial]"), "work-order": dialog.querySelector("[data-do=work-order]") };

  // The record that ticks go into: its id and when it was started; null until one is chosen or begun.
  let current = null;

  const say = text => { said.textContent = text; };

  const parsed = text => {
    try { return JSON.parse(text); } catch { return null; }
  };

  const isRecord = value => value !== null && typeof value === "object" && value.form === form
    && value.fields !== null && typeof value.fields === "object";

  // A browser may refuse any of these.
  const guarded = (action, refused) => {
    try { return action(); } catch { return refused; }
  };

  const store = {
    load: id => guarded(() => parsed(localStorage.getItem(prefix + id)), null),
    save: kept => guarded(() => { localStorage.setItem(prefix + kept.id, JSON.stringify(kept)); return true; }, false),
    remove: id => guarded(() => localStorage.removeItem(prefix + id), undefined),
    all: start => guarded(() => Object.keys(localStorage).filter(key => key.startsWith(start)).map(key => parsed(localStorage.getItem(key))).filter(isRecord), []),
  };

  // Of this tab: which record a page that is loaded again goes on with.
  const tab = {
    load: () => guarded(() => sessionStorage.getItem(prefix), null),
    save: id => guarded(() => sessionStorage.setItem(prefix, id), undefined),
  };

  const timeOf = started => {
    const at = new Date(started);
    if (Number.isNaN(at.getTime())) return inWords("unknown-time");
    const two = number => String(number).padStart(2, "0");
    return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
  };

  const nameOf = kept => [
    typeof kept.fields.serial === "string" && kept.fields.serial ? inWords("serial", { number: kept.fields.serial }) : "",
    typeof kept.fields["work-order"] === "string" && kept.fields["work-order"] ? inWords("work-order", { number: kept.fields["work-order"] }) : "",
  ].filter(Boolean).join(", ");

  const titleOf = kept => `${nameOf(kept) ? `${nameOf(kept)}, ` : ""}${inWords("started", { time: timeOf(kept.started) })}`;

  const read = field => field.type === "checkbox" ? field.checked : field.value;

  const write = (field, value) => {
    if (field.type === "checkbox") field.checked = value === true;
    else field.value = typeof value === "string" ? value : "";
  };

  // What was never touched is not in the record.
  const record = () => {
    const filled = {};
    for (const [name, field] of fields) {
      const value = read(field);
      if (value) filled[name] = value;
    }
    return { form, job, variant: variant.trim(), revision, ...current, changed: new Date().toISOString(), fields: filled };
  };

  const fill = values => {
    for (const [name, field] of fields) write(field, Object.hasOwn(values, name) ? values[name] : undefined);
    showProgress();
  };

  const showProgress = () => {
    const done = steps.filter(step => step.checked).length;
    meter.max = Math.max(steps.length, 1);
    meter.value = done;
    count.textContent = inWords("steps", { done, all: steps.length });
    of.textContent = current ? titleOf(record()) : inWords("no-record");
  };

  const become = (id, started) => {
    current = { id, started };
    tab.save(id);
    dialog.close();
    return packPhotos.show(prefix + id);
  };

  // Two tabs may begin one in the same moment.
  const begin = () => {
    const started = new Date().toISOString();
    return become(`${started} ${Math.random().toString(36).slice(2, 8)}`, started);
  };

  const nameIt = () => {
    for (const [name, input] of Object.entries(names)) {
      if (fields.has(name) && input.value) fields.get(name).value = input.value;
      input.value = "";
    }
  };

  const keep = () => {
    if (!current) {
      // Whoever ticks without an answer begins a record of their own: nothing goes into another machine's.
      begin();
      nameIt();
      say(inWords("begun", { time: timeOf(current.started) }));
    }
    showProgress();
    if (!store.save(record())) say(inWords("not-kept"));
  };

  const goOn = kept => {
    become(kept.id, kept.started);
    fill(kept.fields);
    say(inWords("goes-on", { record: titleOf(kept) }));
  };

  const leave = () => {
    current = null;
    fill({});
    packPhotos.show(null);
  };

  const button = (text, about, action) => {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = text;
    made.setAttribute("aria-label", `${text}: ${about}`);
    made.addEventListener("click", action);
    return made;
  };

  const newestFirst = (one, other) => String(other.changed).localeCompare(String(one.changed));

  const line = kept => {
    const made = document.createElement("li");
    const text = document.createElement("span");
    const about = titleOf(kept);
    text.textContent = kept.id === current?.id ? inWords("this-one", { record: about }) : about;
    made.append(
      text,
      button(inWords("continue"), about, () => goOn(kept)),
      button(inWords("delete"), about, async () => {
        if (!window.confirm(inWords("delete-sure", { record: about }))) return;
        store.remove(kept.id);
        const forgotten = packPhotos.forget(prefix + kept.id);
        if (kept.id === current?.id) leave();
        await forgotten;
        list();
        dialog.querySelector("button").focus();
      }));
    return made;
  };

  const list = () => {
    const own = store.all(prefix).sort(newestFirst);
    const others = store.all(anyRecord).filter(kept => kept.job === job && (kept.revision !== revision || kept.variant !== variant.trim())).sort(newestFirst);
    dialog.querySelector("h2").textContent = own.length === 0 ? inWords("begin")
      : own.length > 1 ? inWords("several")
      : inWords("one", { record: titleOf(own[0]) });
    dialog.querySelector(".records").replaceChildren(...own.map(line));
    dialog.querySelector(".elsewhere").textContent = others.length === 0 ? ""
      : inWords("elsewhere", { records: others.map(kept => inWords("of-revision", { record: titleOf(kept), revision: kept.revision })).join("; ") });
    return own.length;
  };

  const ask = () => {
    list();
    // Where it lies open in the page, it is not in front of it.
    dialog.close();
    dialog.showModal();
  };

  const load = async file => {
    const loaded = parsed(await file.text());
    if (!isRecord(loaded)) return say(inWords("no-file", { file: file.name }));
    if (loaded.job !== job || loaded.variant !== variant.trim() || loaded.revision !== revision)
      return say(inWords("other-job", { file: file.name, other: loaded.job, otherRevision: loaded.revision, job, revision }));
    const here = typeof loaded.id === "string" ? store.load(loaded.id) : null;
    if (isRecord(here) && String(here.changed) > String(loaded.changed)
      && !window.confirm(inWords("replace-sure", { time: timeOf(here.changed) }))) return say(inWords("unchanged"));
    await (typeof loaded.id === "string" && typeof loaded.started === "string" ? become(loaded.id, loaded.started) : begin());
    fill(loaded.fields);
    keep();
    await packPhotos.take(loaded.photos);
    say(inWords("loaded", { file: file.name }));
  };

  const save = () => {
    if (!current) return say(inWords("nothing-to-save"));
    const kept = { ...record(), photos: packPhotos.all() };
    const name = nameOf(kept).replace(/[^A-Za-z0-9.-]+/g, "_");
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([JSON.stringify(kept, null, 2) + "\n"], { type: "application/json" }));
    link.download = `${job}-${revision}-${name ? `${name}-` : ""}record.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    say(inWords("saved", { file: link.download }));
  };

  const print = blank => {
    document.documentElement.classList.toggle("print-blank", blank);
    window.print();
  };

  const actions = {
    "print-filled": () => print(false),
    "print-blank": () => print(true),
    export: save,
    records: ask,
    later: () => dialog.close(),
    start() {
      begin();
      fill({});
      nameIt();
      say(inWords("is-started", { record: titleOf(record()) }));
      keep();
    },
    async clear() {
      if (!current) return say(inWords("nothing-to-clear"));
      if (!window.confirm(inWords("clear-sure"))) return;
      // What it goes by stays, else it could not be told from another.
      const { serial, "work-order": order } = record().fields;
      fill({ serial, "work-order": order });
      keep();
      await packPhotos.clear();
      say(inWords("cleared"));
    },
    next() {
      const open = steps.find(step => !step.checked);
      if (!open) return say(inWords("all-ticked"));
      open.closest(".step").scrollIntoView({ block: "start" });
      open.focus({ preventScroll: true });
    },
  };

  for (const pressed of document.querySelectorAll("button[data-do]"))
    pressed.addEventListener("click", actions[pressed.dataset.do]);
  for (const input of Object.values(names)) {
    input.addEventListener("keydown", event => {
      if (event.key === "Enter") actions.start();
    });
  }
  const chooser = document.querySelector("[data-do=import]");
  chooser.addEventListener("change", async () => {
    if (chooser.files.length === 1) await load(chooser.files[0]);
    chooser.value = "";
  });
  const apart = document.querySelector("[data-do=apart]");
  apart.addEventListener("change", () => document.documentElement.classList.toggle("card-layout", apart.checked));
  window.addEventListener("afterprint", () => document.documentElement.classList.remove("print-blank"));
  // The same record in another tab.
  window.addEventListener("storage", event => {
    if (!current || event.key !== prefix + current.id) return;
    const other = store.load(current.id);
    if (isRecord(other)) fill(other.fields);
  });
  document.addEventListener("input", event => {
    if (event.target.dataset.field) keep();
  });

  packPhotos.start({
    say,
    ensure() {
      if (!current) keep();
    },
  });
  for (const hidden of document.querySelectorAll(".tools, .bar")) hidden.hidden = false;
  // Some browsers bring a page back with its fields filled in; a pack prints as it was built until somebody says otherwise.
  apart.checked = document.documentElement.classList.contains("card-layout");
  leave();
  const lately = store.load(tab.load());
  if (isRecord(lately) && Date.now() - new Date(lately.changed).getTime() < shift) {
    become(lately.id, lately.started);
    fill(lately.fields);
  }
  // The question comes before the page; the offer lies in it.
  else if (list() > 0) ask();
  else dialog.open = true;
})();
