-- Runs inside Neovim: opens the library and prints a line for each thing that came back, or did not.
local patience = 60000
local failed = 0

local function check(name, problem)
  failed = failed + (problem and 1 or 0)
  io.stdout:write((problem and 'not ok' or 'ok') .. ' - ' .. name .. (problem and ': ' .. problem or '') .. '\n')
end

vim.cmd('edit wheel.proc')
local buffer = vim.api.nvim_get_current_buf()

local function position(line, text)
  local column = vim.api.nvim_buf_get_lines(buffer, line - 1, line, true)[1]:find(text, 1, true)
  return { line = line - 1, character = column - 1 }
end

-- The colours at a place, from the last piece of the query that fits. The tree was made when the file was opened.
local function captures(line, text)
  local get = vim.treesitter.query and vim.treesitter.query.get or vim.treesitter.get_query
  local query = get('procscript', 'highlights')
  local place = position(line, text)
  local found = {}
  for _, tree in ipairs({ vim.treesitter.get_parser(buffer, 'procscript'):parse()[1] }) do
    for id, node in query:iter_captures(tree:root(), buffer, 0, -1) do
      local from, start, to, stop = node:range()
      if from == place.line and to == from and start <= place.character and place.character < stop then
        table.insert(found, query.captures[id])
      end
    end
  end
  return table.concat(found, ' ')
end

local function colours()
  if not vim.treesitter.highlighter.active[buffer] then
    return 'the buffer is not coloured'
  end
  local wanted = {
    { 1, 'use', 'keyword.conditional' },
    { 1, '"', 'string' },
    { 3, 'wheel_off', 'type.definition' },
    { 3, 'press', 'variable' },
    { 6, 'undo', 'function.builtin' },
    { 6, 'guard_bolts', 'variable' },
    { 3, '{', 'punctuation.bracket' },
  }
  for _, want in ipairs(wanted) do
    local got = captures(want[1], want[2])
    if got ~= want[3] then
      return string.format("'%s' in line %d is '%s', not '%s'", want[2], want[1], got, want[3])
    end
  end
end
check('colours: words, names and texts, each its own', colours())

-- The answer of the server, or what went wrong. Neovim would wait for one that is not offered until its patience ends.
local function ask(capability, method, parameters)
  local _, client = next((vim.lsp.get_clients or vim.lsp.get_active_clients)({ bufnr = buffer }))
  if not (client and client.server_capabilities[capability]) then
    return nil, 'the server does not offer it'
  end
  parameters.textDocument = { uri = vim.uri_from_bufnr(buffer) }
  local answers, problem = vim.lsp.buf_request_sync(buffer, method, parameters, patience)
  if not answers then
    return nil, problem
  end
  local _, answer = next(answers)
  return answer and answer.result, answer and answer.err and vim.inspect(answer.err) or nil
end

local function findings(code)
  return vim.tbl_filter(function(finding)
    return (finding.code or (finding.user_data and finding.user_data.lsp.code)) == code
  end, vim.diagnostic.get(buffer))
end

local seen = vim.wait(patience, function()
  return #findings('PRC3001') > 0
end)
local finding = findings('PRC3001')[1]
check('diagnostics: the wheel is still held, at its line', (not seen and 'none came') or (finding.lnum ~= 9 and vim.inspect(finding)) or nil)

local hover, problem = ask('hoverProvider', 'textDocument/hover', { position = position(7, 'guard') })
local said = hover and vim.inspect(hover.contents) or ''
check('hover: what the guard is', problem or (not said:find('guard_bolts', 1, true) and 'it says ' .. said) or nil)

local places
places, problem = ask('definitionProvider', 'textDocument/definition', { position = position(6, 'guard_bolts') })
local place = places and (places[1] or places)
local target = place and (place.uri or place.targetUri) or ''
local range = place and (place.range or place.targetSelectionRange)
check('definition: the bolts are declared in press.proc', problem or (not (target:find('press.proc', 1, true) and range.start.line == 4) and vim.inspect(places)) or nil)

local offered
offered, problem = ask('completionProvider', 'textDocument/completion', { position = { line = 6, character = 4 } })
local labels, twice = {}, nil
for _, item in ipairs(offered and (offered.items or offered) or {}) do
  twice = twice or (labels[item.label] and item.label)
  labels[item.label] = true
end
check('completion: each sentence once', problem or (not labels['remove'] and 'remove is not offered') or (twice and twice .. ' comes twice'))

local edit
edit, problem = ask('renameProvider', 'textDocument/rename', { position = position(7, 'guard'), newName = 'shield' })
if edit then
  vim.lsp.util.apply_workspace_edit(edit, 'utf-16')
end
local machine = table.concat(vim.api.nvim_buf_get_lines(vim.uri_to_bufnr(vim.uri_from_fname(vim.fn.getcwd() .. '/press.proc')), 0, -1, false), '\n')
local procedure = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, true), '\n')
local renamed = machine:find('part shield', 1, true) and machine:find('behind shield', 1, true) and procedure:find('remove shield', 1, true)
check('rename: in both files', problem or (not renamed and machine .. '\n' .. procedure) or nil)

local edits
edits, problem = ask('documentFormattingProvider', 'textDocument/formatting', { options = { tabSize = 2, insertSpaces = true } })
if edits then
  vim.lsp.util.apply_text_edits(edits, buffer, 'utf-16')
end
local laid = vim.api.nvim_buf_get_lines(buffer, 5, 6, true)[1]
check('formatting: two blanks a level', problem or (laid ~= '    undo guard_bolts' and 'the line is "' .. laid .. '"') or nil)

vim.cmd(failed == 0 and 'qall!' or 'cquit! 1')
