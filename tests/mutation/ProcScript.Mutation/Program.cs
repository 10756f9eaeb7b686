using ProcScript.Mutation;
using ProcScript.Mutation.Running;

// [--folders NAME,...]   folders of the room whose code is changed; Actions, Needs, Refitting, Proving, Stripping and States without it
// [--sample N] [--seed N] how many of all mutants, drawn by this seed; all of them with --sample 0
// [--only N,...]         these mutants alone, by their numbers
// [--longest SECONDS]    tests that take longer are left out; 1.5 without it
// [--each SECONDS]       a mutant is tried by tests that reach it and take so long together without it; 30 without the option
// [--tests NAME,...]      tried by these test classes alone
// [--list]               tells all mutants and tries none
// [--report FILE]        where the table and the survivors are written as well
return args is ["work", .. var asked] ? Worker.Run(asked) : MutationOptions.Parse(args) is { } options ? MutationRun.Run(options) : 2;
