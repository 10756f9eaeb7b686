using ProcScript.Fuzz;

// [--seconds N] [--inputs N]  ends after so many seconds, or inputs; without either after a minute
// [--seed N] [--from N]       the same seed gives the same inputs; --from begins with a later one
// [--sort NAME]               only inputs of this sort
// [--keep FOLDER]             where inputs that break something are written, each as a small library
return FuzzOptions.Parse(args) is { } options ? FuzzRun.Run(options) : 2;
