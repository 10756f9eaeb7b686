import assert from 'node:assert/strict'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { test } from 'node:test'
import * as actions from '@actions/core'
import Ajv from 'ajv/dist/2020.js'
import addFormats from 'ajv-formats'
import { parse } from 'junit2json'
import { check, folder, run, validate } from './library.mjs'

const report = JSON.parse(check('--format', 'json'))
const all = [...report.findings, ...report.silenced]

// The schema that the makers of the format publish with their own tools.
const schema = JSON.parse(readFileSync(new URL('node_modules/@microsoft/sarif-multitool-linux/sarif-2.1.0.json', import.meta.url)))
const isSarif = addFormats(new Ajv({ strict: false, allErrors: true })).compile(schema)

function assertSarif(log) {
  assert.ok(isSarif(log), JSON.stringify(isSarif.errors, null, 1))
}

test('the library has findings of every sort', () => {
  assert.deepEqual(new Set(report.findings.map((finding) => finding.severity)), new Set(['error', 'warning', 'hint']))
  assert.ok(report.silenced.length > 0)
  assert.ok(report.findings.some((finding) => finding.fixes.length > 0 && finding.related.length > 0))
})

test('SARIF is valid by the published schema, with and without time, suppressions and baseline', () => {
  run('baseline', 'write', '.', '-o', 'baseline.json', '--today', '2026-06-01')
  for (const options of [[], ['--time'], ['--baseline', 'baseline.json'], ['--max-findings', '1'], ['--wording', 'neutral']]) {
    const log = JSON.parse(check('--format', 'sarif', ...options))
    assertSarif(log)
    assert.ok(log.runs[0].results.length > 0)
  }
})

test('the schema refuses what is wrong', () => {
  const log = JSON.parse(check('--format', 'sarif'))
  log.runs[0].results[0].level = 'fatal'
  assert.ok(!isSarif(log))
})

test('every finding is in the SARIF log', () => {
  const { results } = JSON.parse(check('--format', 'sarif')).runs[0]
  assert.deepEqual(
    results.map((result) => result.partialFingerprints['procscriptFinding/v1']).sort(),
    all.map((finding) => finding.fingerprint).sort(),
  )
})

const isLinux = process.platform === 'linux'

test("the validator of SARIF's makers finds no error, by the rules of GitHub neither", { skip: !isLinux && 'its program is for Linux' }, () => {
  writeFileSync(join(folder, 'findings.sarif'), check('--format', 'sarif', '--time'))
  validate('findings.sarif', '--rule-kind', 'Sarif;Gh', '-o', 'verdict.sarif', '--log', 'ForceOverwrite', '--level', 'Error;Warning;Note')
  const verdict = JSON.parse(readFileSync(join(folder, 'verdict.sarif'), 'utf8').replace(/^\uFEFF/, '')).runs[0]
  const told = new Set(verdict.results.map((result) => `${result.level ?? 'warning'} ${result.ruleId}`))
  console.log([...told].join('\n'))
  assert.deepEqual([...told].filter((one) => one.startsWith('error')), [])
})

test('a reader of JUnit sees the same failures', async () => {
  for (const failOn of ['error', 'warning', 'hint', 'never']) {
    const suites = await parse(check('--format', 'junit', '--fail-on', failOn))
    const weights = { error: ['error'], warning: ['error', 'warning'], hint: ['error', 'warning', 'hint'], never: [] }
    const expected = report.findings.filter((finding) => weights[failOn].includes(finding.severity)).length
    const cases = suites.testsuite.flatMap((suite) => suite.testcase)
    assert.equal(suites.failures, expected)
    assert.equal(cases.filter((one) => one.failure).length, expected)
    assert.equal(suites.tests, cases.length)
    assert.equal(cases.length, all.length + report.procedures.length)
  }
})

test("GitHub's own writer of annotations writes the same", () => {
  const lines = check('--format', 'github').trimEnd().split('\n').slice(0, -1)
  assert.equal(lines.length, report.findings.length)
  for (const [i, finding] of report.findings.entries()) {
    assert.equal(lines[i], annotation(finding))
  }
})

function annotation({ severity, rule, name, message, label, help, place }) {
  const { file, line, column, endLine, endColumn } = place
  const columns = line === endLine ? { startColumn: column, endColumn } : {}
  const text = [message, label, help && `Help: ${help}`].filter(Boolean).join('\n')
  return written(() =>
    actions[severity === 'hint' ? 'notice' : severity](text, { title: `${rule} ${name}`, file, startLine: line, endLine, ...columns }),
  )
}

function written(action) {
  const { write } = process.stdout
  let text = ''
  process.stdout.write = (chunk) => {
    text += chunk
    return true
  }
  try {
    action()
  } finally {
    process.stdout.write = write
  }
  return text.trimEnd()
}
