using System.ComponentModel;
using System.Diagnostics;

namespace ProcScript.Bench.Peers;

/// <summary>Fetches the peers from where their makers publish them, for Linux on x64; what cannot be had is left out and said so.</summary>
internal static class PeerPrograms
{
    private const string TypeScriptVersion = "7.0.2";
    private const string BufVersion = "1.75.0";
    private const string BicepVersion = "0.49.2";

    /// <summary>The peers that could be had.</summary>
    /// <param name="folder">Where to put them.</param>
    public static IEnumerable<Peer> Fetch(string folder)
    {
        Directory.CreateDirectory(folder);
        var modules = Path.Combine(folder, "node_modules");
        if (Ran(folder, "npm", "install", "--prefix", folder, "--no-audit", "--no-fund", "--loglevel", "error", $"typescript@{TypeScriptVersion}", $"@bufbuild/buf@{BufVersion}"))
        {
            yield return new Peer(
                $"tsc {TypeScriptVersion}",
                Path.Combine(modules, "@typescript", "typescript-linux-x64", "lib", "tsc"),
                PeerFiles.WriteTypeScript,
                files => ["-p", files]);
            yield return new Peer(
                $"buf lint {BufVersion}",
                Path.Combine(modules, "@bufbuild", "buf-linux-x64", "bin", "buf"),
                PeerFiles.WriteProtocolBuffers,
                files => ["lint", files]);
        }

        var project = Path.Combine(folder, "bicep.csproj");
        File.WriteAllText(project, $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><TargetFramework>net10.0</TargetFramework></PropertyGroup>
              <ItemGroup><PackageDownload Include="Azure.Bicep.CommandLine.linux-x64" Version="[{BicepVersion}]" /></ItemGroup>
            </Project>
            """);
        var packages = Path.Combine(folder, "packages");
        if (Ran(folder, "dotnet", "restore", project, "--packages", packages, "--verbosity", "quiet"))
        {
            var bicep = Path.Combine(packages, "azure.bicep.commandline.linux-x64", BicepVersion, "tools", "bicep");
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(bicep, UnixFileMode.UserRead | UnixFileMode.UserExecute);
            }

            yield return new Peer($"bicep lint {BicepVersion}", bicep, PeerFiles.WriteBicep, files => ["lint", "--pattern", Path.Combine(files, "*.bicep")]);
        }
    }

    private static bool Ran(string folder, string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = folder })!;
            process.WaitForExit();
            if (process.ExitCode == 0)
            {
                return true;
            }

            Console.WriteLine($"Left out what `{program} {string.Join(' ', arguments)}` could not fetch (exit code {process.ExitCode}).");
        }
        catch (Win32Exception e)
        {
            Console.WriteLine($"Left out what `{program}` fetches: {e.Message}");
        }

        return false;
    }
}
