using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Translations;
using ProcScript.Model;
using ProcScript.Model.Texts;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A text has no translation into the language that is asked for, or one of an earlier wording.</summary>
public sealed class TextNotTranslated : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7022", "text-not-translated", "A text without a translation that holds", Severity.Hint);

    private const string Export = "`procscript texts export` writes out what there is to translate";

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Packs are asked for in a language, and the file of translations has nothing for a text, or a translation of an earlier wording. Where there is "
            + "no such file, that is told once.",
        Why: "The pack prints the author's words, marked as not translated. A translation of what the text said before may say the opposite now.",
        Wrong: """
            // file: procscript.json
            { "language": "de" }
            // file: press.proc
            machine press "Press" { part guard "guard" }
            procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { remove guard } }
            // file: texts/de.xlf
            <?xml version="1.0" encoding="utf-8"?>
            <xliff version="2.1" srcLang="en" trgLang="de" xmlns="urn:oasis:names:tc:xliff:document:2.0">
              <file id="f1" original="press.proc">
                <unit id="u1" name="machine.press:title"><segment><source>Press</source><target>Presse</target></segment></unit>
                <unit id="u2" name="machine.press:part.guard:title"><segment><source>guard</source><target>Schutz</target></segment></unit>
                <unit id="u3" name="procedure.guard_off:title"><segment><source>Take the guard off</source><target>Schutz abnehmen</target></segment></unit>
              </file>
            </xliff>
            """,
        Right: """
            // file: procscript.json
            { "language": "de" }
            // file: press.proc
            machine press "Press" { part guard "guard" }
            procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { remove guard } }
            // file: texts/de.xlf
            <?xml version="1.0" encoding="utf-8"?>
            <xliff version="2.1" srcLang="en" trgLang="de" xmlns="urn:oasis:names:tc:xliff:document:2.0">
              <file id="f1" original="press.proc">
                <unit id="u1" name="machine.press:title"><segment><source>Press</source><target>Presse</target></segment></unit>
                <unit id="u2" name="machine.press:part.guard:title"><segment><source>guard</source><target>Schutz</target></segment></unit>
                <unit id="u3" name="procedure.guard_off:title"><segment><source>Take the guard off</source><target>Schutz abnehmen</target></segment></unit>
                <unit id="u4" name="procedure.guard_off:stage.1:title"><segment><source>Guard</source><target>Schutz</target></segment></unit>
              </file>
            </xliff>
            """);

    /// <summary>What is not translated in a library; nothing where no other language is asked for.</summary>
    internal static IEnumerable<Finding> Judge(Library library, CheckSettings settings)
    {
        if (settings.Translation is not { File: { } file } translation)
        {
            yield break;
        }

        var tag = translation.Language.Tag();
        if (file.Units.IsEmpty && library.Trees.Keys.FirstOrDefault() is { } first)
        {
            var why = file.Problem.Length > 0 ? $"`{translation.Path}` cannot be used: {file.Problem}" : $"there is no `{translation.Path}`";
            yield return new Finding(Id, $"no text of this library has a translation into `{tag}`: {why}", new SourceSpan(first, default)) { Help = Export };
            yield break;
        }

        foreach (var finding in library.Trees.SelectMany(tree => Judge(tree.Key, AuthorTextUnits.Of(tree.Value), translation, tag)))
        {
            yield return finding;
        }
    }

    /// <summary>One finding for all that a file lacks, and one for each translation that does not hold.</summary>
    private static IEnumerable<Finding> Judge(string path, ImmutableArray<AuthorTextUnit> units, LibraryTranslation translation, string tag)
    {
        var missing = units.Where(unit => translation.Known(path, unit) is not { Target.Length: > 0 }).ToList();
        if (missing.Count > 0)
        {
            yield return new Finding(Id, $"{missing.Count} of the {units.Length} texts of this file {(missing.Count == 1 ? "has" : "have")} no translation into `{tag}`", new SourceSpan(path, missing[0].Span), "the first")
            {
                Help = Export,
            };
        }

        foreach (var unit in units.Except(missing))
        {
            var place = new SourceSpan(path, unit.Span);
            if (translation.Find(path, unit) is not { } target)
            {
                yield return new Finding(Id, $"the translation into `{tag}` is of an earlier wording", place, "changed since") { Help = Export };
            }
            else if (!Placeholders(unit.Source).SetEquals(Placeholders(target)))
            {
                yield return new Finding(Id, $"the translation into `{tag}` has other placeholders than the text", place, target);
            }
        }
    }

    private static HashSet<string> Placeholders(string text) =>
        [.. System.Text.RegularExpressions.Regex.Matches(text.Replace("{{", "", StringComparison.Ordinal), @"\{\w+\}").Select(match => match.Value)];
}
