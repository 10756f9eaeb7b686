// A library with findings of every severity, silenced and not, in files and texts with awkward letters; and runs of the program on it.
import { execFileSync, spawnSync } from 'node:child_process'
import { chmodSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const repository = fileURLToPath(new URL('../..', import.meta.url))
const program = join(repository, 'src/ProcScript.Cli/bin/Debug/net10.0/procscript.dll')

export const folder = mkdtempSync(join(tmpdir(), 'procscript outputs '))
process.on('exit', () => rmSync(folder, { recursive: true, force: true }))

mkdirSync(join(folder, '.git'))
for (const rule of ['PRC1104', 'PRC3001', 'PRC5001', 'PRC5101', 'PRC7002', 'PRC7004']) {
  for (const kind of ['fires', 'quiet']) {
    cpSync(join(repository, 'tests/cases/rules', rule, kind), join(folder, `50%, a:b größe/${rule} ${kind}`), { recursive: true })
  }
}
writeFileSync(join(folder, 'several lines.proc'), 'tool a "A: 100 %, \u0001 \u{1F527}"\nsupply s "S" { single use\n\ntool a "A"\n')
writeFileSync(join(folder, 'procscript.json'), '{}')

export function run(...options) {
  const done = spawnSync('dotnet', [program, ...options], { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 28 })
  if (done.stderr !== '' || ![0, 1].includes(done.status)) {
    throw new Error(`procscript ${options.join(' ')} ended with ${done.status}: ${done.stderr}`)
  }
  return done.stdout
}

export const check = (...options) => run('check', '.', '--today', '2026-06-01', ...options)

// The package's own starter puts the options through a shell, where a semicolon ends the command.
const validator = join(repository, 'tests/outputs/node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool')

export function validate(...options) {
  // Installed without scripts, it is a file like any other.
  chmodSync(validator, 0o755)
  return execFileSync(validator, ['validate', ...options], { cwd: folder, encoding: 'utf8' })
}
