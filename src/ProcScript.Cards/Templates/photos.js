// Pictures of a record. They lie beside it, in the browser's store for large things: the one for ticks is soon full. A browser that
// keeps none still shows them, and the file that a record is saved to has them. What is shown has been kept, and what is gone from the
// page is gone from the store: whoever leaves the page as soon as it shows that loses nothing and leaves nothing behind.
const packPhotos = (() => {
  "use strict";

  const shelf = "photos";
  const longest = 1600;
  const picture = /^data:image\/jpeg;base64,[A-Za-z0-9+/=]+$/;
  const places = new Map(Array.from(document.querySelectorAll(".photo, .card-foot"), place => [place.querySelector("[data-field]").dataset.field, place]));

  // What is shown: pictures by place and time, of the record with this key.
  let record = null;
  let shown = new Map();
  let pack = null;
  let opened = null;

  const base = () => opened ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open("procscript photos", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(shelf);
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });

  const within = async (mode, ask) => {
    const work = (await base()).transaction(shelf, mode);
    return new Promise((resolve, reject) => {
      const asked = ask(work.objectStore(shelf));
      work.oncomplete = () => resolve(asked.map(one => one.result));
      work.onerror = work.onabort = () => reject(work.error);
    });
  };

  const keyOf = (of, name) => `${of}\n${name}`;
  const all = of => IDBKeyRange.bound(`${of}\n`, `${of}\n\uffff`);

  const keep = async (of, name, made) => {
    try {
      await within("readwrite", store => [store.put(made, keyOf(of, name))]);
    } catch {
      pack.say(inWords("no-room"));
    }
  };

  const drop = range => within("readwrite", store => [store.delete(range)]).catch(() => undefined);

  // Drawn anew, it is small enough to keep many, and says no more where it was taken.
  const scaled = async file => {
    const whole = await createImageBitmap(file);
    const share = Math.min(1, longest / Math.max(whole.width, whole.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(whole.width * share));
    canvas.height = Math.max(1, Math.round(whole.height * share));
    canvas.getContext("2d").drawImage(whole, 0, 0, canvas.width, canvas.height);
    return canvas.toDataURL("image/jpeg", 0.8);
  };

  const aboutOf = place => (place.querySelector("label[for]") ?? place.closest(".card").querySelector("h2")).textContent.trim();

  const draw = () => {
    const of = record;
    for (const [field, place] of places) {
      const names = Array.from(shown.keys()).filter(name => name.startsWith(`${field} `)).sort();
      place.querySelector(".pictures").replaceChildren(...names.map((name, at) => {
        const line = document.createElement("li");
        const image = document.createElement("img");
        const about = inWords("photo", { number: at + 1, what: aboutOf(place) });
        image.src = shown.get(name);
        image.alt = about;
        const remove = document.createElement("button");
        remove.type = "button";
        remove.textContent = inWords("remove");
        remove.setAttribute("aria-label", inWords("remove-what", { what: about }));
        remove.addEventListener("click", async () => {
          await drop(keyOf(of, name));
          if (record !== of) return;
          shown.delete(name);
          draw();
          place.querySelector("input[type=file]").focus();
        });
        line.append(image, remove);
        return line;
      }));
    }
  };

  const add = async (field, files) => {
    // Whoever turns to another record meanwhile has still taken these of this one.
    let of = record;
    for (const file of files) {
      try {
        const made = await scaled(file);
        if (of === null) {
          pack.ensure();
          of = record;
        }
        const name = `${field} ${new Date().toISOString()} ${Math.random().toString(36).slice(2, 6)}`;
        await keep(of, name, made);
        if (record === of) {
          shown.set(name, made);
          draw();
        }
      } catch {
        pack.say(inWords("no-picture", { file: file.name }));
      }
    }
  };

  return {
    // Puts a button beside every place for a picture; what it needs of the pack: say(text), and ensure() that there is a record.
    start(of) {
      pack = of;
      for (const [field, place] of places) {
        const label = document.createElement("label");
        const input = document.createElement("input");
        const pictures = document.createElement("ul");
        label.className = "button camera";
        label.textContent = inWords("add-photo");
        input.type = "file";
        input.accept = "image/*";
        input.multiple = true;
        input.setAttribute("aria-label", inWords("add-photo-to", { what: aboutOf(place) }));
        input.addEventListener("change", async () => {
          await add(field, Array.from(input.files));
          input.value = "";
        });
        label.append(input);
        pictures.className = "pictures";
        place.append(label, pictures);
      }
    },
    // Shows those of a record; of none where the key is null.
    async show(key) {
      record = key;
      shown = new Map();
      draw();
      if (key === null) return;
      const [names, pictures] = await within("readonly", store => [store.getAllKeys(all(key)), store.getAll(all(key))]).catch(() => [[], []]);
      if (record !== key) return;
      names.forEach((name, at) => shown.set(name.slice(key.length + 1), pictures[at]));
      draw();
    },
    all: () => Object.fromEntries(shown),
    // Those of a file, for the record that is shown; what is no picture is left out.
    async take(pictures) {
      const known = Object.entries(pictures ?? {}).filter(([name, data]) => places.has(name.split(" ")[0]) && typeof data === "string" && picture.test(data));
      const of = record;
      await drop(all(of));
      for (const [name, data] of known) await keep(of, name, data);
      if (record !== of) return;
      shown = new Map(known);
      draw();
    },
    forget: key => drop(all(key)),
    async clear() {
      const of = record;
      await drop(all(of));
      if (record !== of) return;
      shown = new Map();
      draw();
    },
  };
})();
