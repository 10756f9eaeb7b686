using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace ProcScript.Cli.Tests.Processes;

/// <summary>What stops a process, by its number in POSIX.</summary>
internal enum StopSignal
{
    /// <summary>What Ctrl-C sends.</summary>
    Interrupt = 2,

    /// <summary>What no process can answer.</summary>
    Kill = 9,
}

/// <summary>Sends signals to processes, at once: a program that sends them would take its time to start.</summary>
internal static class Signals
{
    private const int NoSuchProcess = 3;

    /// <summary>Skips a test where there are no signals.</summary>
    public static void SkipWithout() => Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "There are no signals on this system.");

    /// <summary>Sends a signal; a process that has ended has no use for it.</summary>
    public static void Send(Process process, StopSignal signal)
    {
        if (!process.HasExited && Kill(process.Id, (int)signal) != 0 && Marshal.GetLastPInvokeError() is var error && error != NoSuchProcess)
        {
            throw new Win32Exception(error);
        }
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
