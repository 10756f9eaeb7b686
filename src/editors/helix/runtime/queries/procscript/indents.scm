; Written by 'dotnet run --project src/ProcScript.Generate' from the lexer's and the parser's grammar.

[(property_block) (member_block) (control_block) (procedure_block) (step_block) (rule_block) (test_block)] @indent
"}" @outdent
