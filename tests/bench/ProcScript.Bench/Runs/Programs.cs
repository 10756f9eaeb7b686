using System.Diagnostics;

namespace ProcScript.Bench.Runs;

/// <summary>The programs that are measured: published from this checkout, as they reach the user.</summary>
internal static class Programs
{
    /// <summary>The program that the runtime compiles while it runs.</summary>
    public static IReadOnlyList<string> Jit(string folder)
    {
        Publish(Path.Combine(folder, "jit"), "-p:PublishAot=false", "--self-contained", "false");
        return ["dotnet", Path.Combine(folder, "jit", "procscript.dll")];
    }

    /// <summary>The native program.</summary>
    public static IReadOnlyList<string> Native(string folder)
    {
        Publish(Path.Combine(folder, "native"), "-r", "linux-x64");
        return [Path.Combine(folder, "native", "procscript")];
    }

    private static void Publish(string output, params string[] options)
    {
        string[] arguments = ["publish", Path.Combine(Checkout.Root, "src", "ProcScript.Cli"), "-c", "Release", "-o", output, "--nologo", "-v", "quiet", .. options];
        using var publish = Process.Start(new ProcessStartInfo("dotnet", arguments)) ?? throw new InvalidOperationException("'dotnet' did not start.");
        publish.WaitForExit();
        if (publish.ExitCode != 0)
        {
            throw new InvalidOperationException("The program could not be published.");
        }
    }
}
