using System.CommandLine;

RootCommand root = new("Checks, formats and publishes ProcScript procedures.");
return await root.Parse(args).InvokeAsync();
