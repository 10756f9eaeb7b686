using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A settings file lies deeper than the root of the library.</summary>
public sealed class StraySettings : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7021", "stray-settings", "A settings file that is not read", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `procscript.json` lies in a folder of the library below its root. Only the one at the root is read, and what "
            + "it extends.",
        Why: "Whoever checks that folder alone makes it a root and gets other findings than whoever checks the library.",
        Wrong: """
            // file: press/procscript.json
            { "wording": "neutral" }
            // file: press/press.proc
            machine press "Press" { part guard "guard" }
            procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { remove guard } }
            """,
        Right: """
            // file: procscript.json
            { "overrides": [{ "paths": "press/**", "wording": "neutral" }] }
            // file: press/press.proc
            machine press "Press" { part guard "guard" }
            procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { remove guard } }
            """);

    internal static Finding At(string path) =>
        new(Id, $"`{path}` is not read: it lies deeper than the root of the library", new SourceSpan(path, default))
        {
            Help = "move what it chooses into an override of the file at the root, or name it there with `extends`",
        };
}
