(() => {
  "use strict";

  // Every local file shares one store: the key keeps jobs, variants and revisions apart.
  const { job, variant, revision } = document.body.dataset;
  const key = `procscript record: ${job} / ${variant.trim()} / ${revision}`;
  const form = "procscript record 1";
  const fields = new Map(Array.from(document.querySelectorAll("[data-field]"), field => [field.dataset.field, field]));
  const steps = Array.from(document.querySelectorAll("input.main"));
  const said = document.querySelector(".said");
  const meter = document.querySelector(".bar progress");
  const count = document.querySelector(".bar .count");

  const say = text => { said.textContent = text; };

  const store = {
    load() {
      try { return JSON.parse(localStorage.getItem(key)); } catch { return null; }
    },
    save(record) {
      try { localStorage.setItem(key, JSON.stringify(record)); return true; } catch { return false; }
    },
  };

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
    return { form, job, variant: variant.trim(), revision, fields: filled };
  };

  const fill = values => {
    for (const [name, field] of fields) write(field, Object.hasOwn(values, name) ? values[name] : undefined);
    showProgress();
  };

  const showProgress = () => {
    const done = steps.filter(step => step.checked).length;
    meter.max = Math.max(steps.length, 1);
    meter.value = done;
    count.textContent = `${done} of ${steps.length} steps`;
  };

  const keep = () => {
    showProgress();
    if (!store.save(record())) say("This browser keeps no record of the page. Save the record to a file before you close it.");
  };

  const isRecord = value => value !== null && typeof value === "object" && value.form === form
    && value.fields !== null && typeof value.fields === "object";

  const load = async file => {
    let loaded = null;
    try { loaded = JSON.parse(await file.text()); } catch { /* said below */ }
    if (!isRecord(loaded)) return say(`${file.name} is not a record of a work pack. Nothing was changed.`);
    if (loaded.job !== job || loaded.variant !== variant.trim() || loaded.revision !== revision)
      return say(`${file.name} belongs to ${loaded.job}, revision ${loaded.revision}; this is ${job}, revision ${revision}. Nothing was changed.`);
    fill(loaded.fields);
    keep();
    say(`The record from ${file.name} is loaded.`);
  };

  const save = () => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([JSON.stringify(record(), null, 2) + "\n"], { type: "application/json" }));
    link.download = `${job}-${revision}-record.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    say(`The record is saved as ${link.download}.`);
  };

  const print = blank => {
    document.documentElement.classList.toggle("print-blank", blank);
    window.print();
  };

  const actions = {
    "print-filled": () => print(false),
    "print-blank": () => print(true),
    export: save,
    clear() {
      if (!window.confirm("Clear every tick and reading of this job?")) return;
      fill({});
      keep();
      say("The record is empty.");
    },
    next() {
      const open = steps.find(step => !step.checked);
      if (!open) return say("Every step is ticked.");
      open.closest(".step").scrollIntoView({ block: "start" });
      open.focus({ preventScroll: true });
    },
  };

  for (const button of document.querySelectorAll("button[data-do]"))
    button.addEventListener("click", actions[button.dataset.do]);
  const chooser = document.querySelector("[data-do=import]");
  chooser.addEventListener("change", async () => {
    if (chooser.files.length === 1) await load(chooser.files[0]);
    chooser.value = "";
  });
  const sharing = document.querySelector("[data-do=run-on]");
  const share = () => document.documentElement.classList.toggle("run-on", sharing.checked);
  sharing.addEventListener("change", share);
  window.addEventListener("afterprint", () => document.documentElement.classList.remove("print-blank"));
  // The same pack in another tab.
  window.addEventListener("storage", event => {
    if (event.key !== key) return;
    const other = store.load();
    if (isRecord(other)) fill(other.fields);
  });
  document.addEventListener("input", event => {
    if (event.target.dataset.field) keep();
  });

  for (const hidden of document.querySelectorAll(".tools, .bar")) hidden.hidden = false;
  // Some browsers bring a page back with its fields filled in.
  share();
  const kept = store.load();
  if (isRecord(kept)) fill(kept.fields);
  else showProgress();
})();
