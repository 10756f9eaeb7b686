using System.Globalization;

namespace ProcScript.Cli.Verbs;

/// <summary>Numbers with their nouns.</summary>
internal static class Counted
{
    /// <summary>Such as <c>1 file</c> or <c>3 files</c>.</summary>
    public static string Of(int count, string noun) => string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");
}
