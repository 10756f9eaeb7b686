using System.Runtime;
using ProcScript.Cli;

// To collect garbage beside the work pays where somebody waits for an answer at any moment. Only the language server switches it on again.
GCSettings.LatencyMode = GCLatencyMode.Batch;
using var signals = new StopSignals();
var code = await CommandLine.RunAsync(args, Surroundings.OfThisProcess(), signals.Token);
return (int)(code == ExitCode.Interrupted ? signals.Code : code);
