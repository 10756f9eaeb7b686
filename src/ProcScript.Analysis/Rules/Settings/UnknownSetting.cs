using System.Collections.Immutable;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A settings file has a key that means nothing.</summary>
public sealed class UnknownSetting : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7013", "unknown-setting", "A setting that does not exist", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A settings file has a key that no setting has at that place, or chooses for some paths what can only be chosen "
            + "for the whole library.",
        Why: "What was to be chosen does not hold. Mostly the key is mistyped, or it stands in the wrong group.",
        Wrong: """
            // file: procscript.json
            { "limits": { "onePersonMas": "20 kg" } }
            """,
        Right: """
            // file: procscript.json
            { "limits": { "onePersonMass": "20 kg" } }
            """);

    internal static Finding At(string key, string group, ImmutableArray<string> known, SourceSpan place)
    {
        var near = new NearNames(known).Find(key[group.Length..]);
        return new Finding(Id, $"there is no setting `{key}`", place)
        {
            Help = near.IsEmpty
                ? $"{(group.Length == 0 ? "here may stand" : $"in `{group.TrimEnd('.')}` may stand")} {WordList.OrNames(known)}"
                : DidYouMean.Help(near),
        };
    }

    internal static Finding OfLibrary(string key, SourceSpan place) =>
        new(Id, $"`{key}` is chosen for the whole library, and not for some paths", place)
        {
            Help = "move it out of the override",
        };
}
