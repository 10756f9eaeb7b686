using ProcScript.Cli;

using var signals = new StopSignals();
var code = await CommandLine.RunAsync(args, Surroundings.OfThisProcess(), signals.Token);
return (int)(code == ExitCode.Interrupted ? signals.Code : code);
