// What the script says, in the language of the pack: the page brings the words along, and here their places are filled in.
const inWords = (() => {
  "use strict";

  const words = JSON.parse(document.body.dataset.words);
  return (key, values = {}) => words[key].replace(/\{(\w+)\}/g, (_, name) => String(values[name]));
})();

