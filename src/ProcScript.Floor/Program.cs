using System.CommandLine;
using ProcScript.Floor;
using ProcScript.Floor.Index;

Option<DirectoryInfo> jobs = new("--jobs") { Description = "The folder of the jobs.", Required = true };
Option<int> port = new("--port") { Description = "The port to listen on; 0 for any that is free.", DefaultValueFactory = _ => FloorOptions.UsualPort };
Option<bool> lan = new("--lan") { Description = "Serve the shop's network, over TLS, and not this machine alone." };
Option<bool> noPairing = new("--no-pairing") { Description = "Let in everybody on this machine without a code. Not with --lan." };
Option<string[]> names = new("--name") { Description = "A name by which browsers reach the server, beside this machine's own." };
Option<FileInfo?> certificate = new("--certificate") { Description = "The certificate for --lan, in PEM." };
Option<FileInfo?> key = new("--key") { Description = "The certificate's key, in PEM." };
Option<string> store = new("--store") { Description = "Where the jobs are kept.", DefaultValueFactory = _ => "files" };
Option<string?> connection = new("--connection") { Description = "How the database is reached: host, database, user." };
Option<bool> bringIn = new("--bring-in") { Description = "Put the jobs of the folder into the database first." };
Option<string?> index = new("--index") { Description = "The folder of this machine for the index of the board, or none; without it, the one for what can be done without.", HelpName = "DIR|none" };
Option<bool> rebuildIndex = new("--rebuild-index") { Description = "Make the index of the board anew from the journals." };
store.AcceptOnlyFromAmong("files", "postgres");
RootCommand root = new("Serves the jobs of a shop to the tablets at its machines.") { jobs, port, lan, noPairing, names, certificate, key, store, connection, bringIn, index, rebuildIndex };
root.SetAction((parsed, stop) => FloorProgram.RunAsync(
    new FloorOptions
    {
        Folder = parsed.GetValue(jobs)!.FullName,
        Port = parsed.GetValue(port),
        Lan = parsed.GetValue(lan),
        Pairing = !parsed.GetValue(noPairing),
        Names = [.. parsed.GetValue(names) ?? []],
        Certificate = parsed.GetValue(certificate)?.FullName,
        Key = parsed.GetValue(key)?.FullName,
        Postgres = parsed.GetValue(store) == "postgres",
        Connection = parsed.GetValue(connection),
        BringIn = parsed.GetValue(bringIn),
        IndexFolder = parsed.GetValue(index) is not { Length: > 0 } folder ? IndexPlace.UsualFolder() : folder == "none" ? null : Path.GetFullPath(folder),
        RebuildIndex = parsed.GetValue(rebuildIndex),
    },
    Console.Out,
    Console.Error,
    stop));
return await root.Parse(args).InvokeAsync();
