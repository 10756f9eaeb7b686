// What the tablet keeps for when there is no network: jobs, the board, and what has been told and is not with the server yet.

const name = "floor";
const stores = ["pages", "queue", "board"];
let opened = null;
let memory = null;

/** Whether what is kept outlives the page. */
export const isLasting = () => memory === null;

function open() {
  opened ??= new Promise(resolve => {
    const fail = () => {
      memory = Object.fromEntries(stores.map(store => [store, new Map()]));
      resolve(null);
    };
    try {
      const request = indexedDB.open(name, 1);
      request.onupgradeneeded = () => stores.forEach(store => request.result.createObjectStore(store, { keyPath: "key" }));
      request.onsuccess = () => resolve(request.result);
      request.onerror = fail;
    } catch {
      fail();
    }
  });
  return opened;
}

async function run(store, mode, work) {
  const database = await open();
  if (database === null) {
    return work(null, memory[store]);
  }

  return new Promise((resolve, reject) => {
    const transaction = database.transaction(store, mode, { durability: "strict" });
    const request = work(transaction.objectStore(store), null);
    transaction.oncomplete = () => resolve(request?.result);
    transaction.onabort = () => reject(transaction.error ?? new Error("The tablet has no room left."));
  });
}

/** Keeps a thing under its key; once it returns, it is on the tablet's disk. */
export const put = (store, thing) => run(store, "readwrite", (kept, map) => kept ? kept.put(thing) : void map.set(thing.key, thing));

/** What is kept under a key; undefined where nothing is. */
export async function get(store, key) {
  return run(store, "readonly", (kept, map) => kept ? kept.get(key) : { result: map.get(key) }).then(found => memory ? found.result : found);
}

/** All that is kept, in the order of keys. */
export async function all(store) {
  return run(store, "readonly", (kept, map) => kept ? kept.getAll() : { result: [...map.values()] }).then(found => memory ? found.result : found);
}

/** Lets go of what is kept under a key. */
export const drop = (store, key) => run(store, "readwrite", (kept, map) => kept ? kept.delete(key) : void map.delete(key));
