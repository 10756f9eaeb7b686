namespace ProcScript.Cli.Tests.Malformed;

/// <summary>Files and declarations that lead nowhere, or back to themselves.</summary>
internal static class TangledLibraries
{
    public static IEnumerable<MalformedInput> All =>
    [
        MalformedInput.Wrong("a file that uses itself", "use \"a.proc\"\n" + Sample.Text),
        MalformedInput.Wrong("two files that use each other", ("a.proc", "use \"b.proc\"\n"), ("b.proc", "use \"a.proc\"\n")),
        MalformedInput.Wrong(
            "a thousand files that use each other in a ring",
            [.. Enumerable.Range(0, 1000).Select(i => ($"f{i}.proc", $"use \"f{(i + 1) % 1000}.proc\"\ntool t{i} \"T\"\n"))]),
        MalformedInput.Wrong(
            "sixty files that all use each other",
            [.. Enumerable.Range(0, 60).Select(i => ($"f{i}.proc", string.Concat(Enumerable.Range(0, 60).Select(j => $"use \"f{j}.proc\"\n"))))]),
        MalformedInput.Wrong("a file that is missing", "use \"missing.proc\"\n"),
        MalformedInput.Wrong("a file outside the library", "use \"../../../../../../../../etc/passwd\"\n"),
        MalformedInput.Wrong("a file from the top of the disk", "use \"/etc/passwd\"\n"),
        MalformedInput.Wrong("a file on a drive", "use \"C:\\\\windows\\\\system.ini\"\n"),
        MalformedInput.Wrong("a folder in place of a file", ("a.proc", "use \"b.proc\"\n"), ("b.proc/c.proc", "tool t \"T\"\n")),
        MalformedInput.Wrong("a file without a name", "use \"\"\n"),
        MalformedInput.Wrong("a file with a name of ten thousand letters", $"use \"{new string('x', 10_000)}.proc\"\n"),
        MalformedInput.Wrong("a used file that is no text", ("a.proc", "use \"b.proc\"\n"), ("b.proc", "\0\0\0")),
        new("a file used ten thousand times", ExitCode.Clean, ("a.proc", [.. Enumerable.Repeat("use \"b.proc\"\n"u8.ToArray(), 10_000).SelectMany(line => line)]), ("b.proc", [])),
        MalformedInput.Wrong("a procedure that does itself", Sample.Machine + "procedure p \"P\" on m { do p }\n"),
        MalformedInput.Wrong("procedures that do each other", Sample.Machine + "procedure p \"P\" on m { do q }\nprocedure q \"Q\" on m { do p }\n"),
        MalformedInput.Wrong("a procedure on no machine", "procedure p \"P\" on nothing { stage \"S\" { remove x } }\n"),
        MalformedInput.Wrong("parts that hide each other", Sample.MachineWith("part x \"X\" { behind y }\npart y \"Y\" { behind x }")),
        MalformedInput.Wrong("a part that hides itself", Sample.MachineWith("part x \"X\" { behind x }")),
        MalformedInput.Wrong("a machine as a part", Sample.Steps("remove m")),
        MalformedInput.Wrong("refit rules in a circle", Sample.Text.Replace(
            "refit { ", "refit { fit pump after fit cover  fit cover after fit pump  ", StringComparison.Ordinal)),
        MalformedInput.Fine("a machine with nothing in it", "machine m \"M\" { }\n"),
    ];
}
