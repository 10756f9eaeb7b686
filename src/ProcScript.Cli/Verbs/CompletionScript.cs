using System.Collections.Immutable;

namespace ProcScript.Cli.Verbs;

/// <summary>The scripts that let shells complete what is typed.</summary>
internal static class CompletionScript
{
    /// <summary>The shells that there is one for.</summary>
    public static ImmutableArray<string> Shells { get; } = ["bash", "zsh", "fish", "pwsh"];

    /// <summary>The script for one of them.</summary>
    public static string For(string shell)
    {
        using var stream = typeof(CompletionScript).Assembly.GetManifestResourceStream($"completions.{shell}")!;
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
