using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Settings;

/// <summary>Where a value comes from.</summary>
/// <param name="Place">Where it is written in a settings file; null where in none.</param>
/// <param name="Words">Where it comes from instead, in words.</param>
public sealed record SettingOrigin(SourceSpan? Place, string Words)
{
    /// <summary>What holds where nothing is chosen.</summary>
    public static SettingOrigin BuiltIn { get; } = new(null, "built in");

    /// <summary>An option of the command.</summary>
    public static SettingOrigin CommandLine { get; } = new(null, "the command line");

    /// <summary>A place in a settings file.</summary>
    public static SettingOrigin At(SourceSpan place) => new(place, "");
}
