import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { IntlMessageFormat } from 'intl-messageformat'

// What the program takes for the plural forms of a number, and makes of messages, is in two files that its own tests hold it to.
const read = (path) => JSON.parse(readFileSync(new URL(path, import.meta.url)))
const languages = ['en', 'de', 'fr', 'es', 'pl']
const messages = Object.fromEntries(languages.map((language) => [language, read(`../../src/ProcScript.Analysis/Messages/${language}.json`)]))

test('the plural forms are those of ICU', () => {
  for (const [language, forms] of Object.entries(read('plurals.json'))) {
    const rules = new Intl.PluralRules(language)
    for (const [form, numbers] of Object.entries(forms)) {
      for (const number of numbers) assert.equal(rules.select(number), form, `${number} in ${language}`)
    }
  }
})

test('messages come out as ICU writes them', () => {
  for (const { language, message, values, text } of read('messages.json')) {
    assert.equal(String(new IntlMessageFormat(message, language, undefined, { ignoreTag: true }).format(values)), text)
  }
})

test('every message of every language is one that ICU reads', () => {
  for (const language of languages) {
    assert.deepEqual(Object.keys(messages[language]), Object.keys(messages.en))
    for (const [key, message] of Object.entries(messages[language])) {
      assert.doesNotThrow(() => new IntlMessageFormat(message, language), `${key} in ${language}`)
    }
  }
})
