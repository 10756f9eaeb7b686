using System.Reflection;

namespace ProcScript.Cli;

/// <summary>The version of this program.</summary>
internal static class ProductVersion
{
    private const int ShownOfCommit = 12;

    // The version, and after a plus sign the commit where the program was built in a checkout.
    private static readonly string[] Built =
        (typeof(ProductVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown").Split('+', 2);

    /// <summary>As the build states it, such as <c>0.1.0</c>.</summary>
    public static string Text => Built[0];

    /// <summary>The first digits of the commit that was built; null for a build outside a checkout.</summary>
    public static string? Commit { get; } = Built is [_, { Length: > 0 } commit] ? commit[..Math.Min(ShownOfCommit, commit.Length)] : null;

    /// <summary>The program with its version.</summary>
    public static string Program => $"procscript {Text}";

    /// <summary>The version, and the commit where it is known, for who has to tell one build from another.</summary>
    public static string Build => Commit is null ? Text : $"{Text} (commit {Commit})";
}
