-- ProcScript for Neovim 0.7 and later: copy this file into the folder 'plugin' of your configuration.
-- It starts 'procscript server' for every .proc file; set vim.g.procscript_path when the program is not on the search path.
-- Colours come from the tree-sitter parser, once colours.sh beside this file has been run.

local group = vim.api.nvim_create_augroup('procscript', {})

vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  group = group,
  pattern = '*.proc',
  callback = function()
    vim.bo.filetype = 'procscript'
  end,
})

-- The library's root, as the command line finds it: the nearest folder above that holds a procscript.json or a .git.
local function root_of(file)
  local folder = vim.fn.fnamemodify(file, ':p:h')
  local mark = vim.fn.findfile('procscript.json', folder .. ';')
  if mark == '' then
    mark = vim.fn.finddir('.git', folder .. ';')
  end
  return mark == '' and folder or (vim.fn.fnamemodify(mark, ':p'):gsub('/+$', ''):gsub('/[^/]*$', ''))
end

local clients = {}

-- Neovim 0.7 starts a client and attaches a buffer to it in two steps; later ones do both, and share clients, in one.
local function attach(buffer, config)
  if vim.lsp.start then
    vim.lsp.start(config)
    return
  end
  local known = clients[config.root_dir]
  if not known or vim.lsp.client_is_stopped(known) then
    clients[config.root_dir] = vim.lsp.start_client(config)
  end
  vim.lsp.buf_attach_client(buffer, clients[config.root_dir])
end

-- Without the parser a file stays plain. Neovim 0.7 has no command yet that does both.
local function colour(buffer)
  if #vim.api.nvim_get_runtime_file('parser/procscript.*', false) == 0 then
    return
  end
  if vim.treesitter.start then
    vim.treesitter.start(buffer, 'procscript')
  else
    vim.treesitter.highlighter.new(vim.treesitter.get_parser(buffer, 'procscript'))
  end
end

vim.api.nvim_create_autocmd('FileType', {
  group = group,
  pattern = 'procscript',
  callback = function(event)
    vim.bo.commentstring = '// %s'
    vim.bo.expandtab = true
    vim.bo.shiftwidth = 2
    vim.bo.omnifunc = 'v:lua.vim.lsp.omnifunc'
    colour(event.buf)
    local root = root_of(vim.api.nvim_buf_get_name(event.buf))
    attach(event.buf, {
      name = 'procscript',
      cmd = { vim.g.procscript_path or 'procscript', 'server' },
      root_dir = root,
      workspace_folders = { { uri = vim.uri_from_fname(root), name = vim.fn.fnamemodify(root, ':t') } },
    })
  end,
})
