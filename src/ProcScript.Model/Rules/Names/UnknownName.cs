using System.Collections.Immutable;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Names;
using ProcScript.Model.Rules.Wording;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A name that nothing declares.</summary>
public sealed class UnknownName : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1101", "unknown-name", "A name that nothing declares", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <summary>What a catalog declares.</summary>
    private static readonly string[] Declared = ["tool", "supply", "certificate", "fastener", "clip", "connector", "line", "bond"];

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A name stands for nothing: no file in sight declares it, and neither does the machine.",
        Why: "A step on something unknown cannot be checked, and nobody at the machine would know what is meant. Most often it is a slip "
            + "of the finger, or a `use` line is missing.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
            }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pin  remove trim }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
            }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim }
            }
            """);

    /// <summary>Of a declaration at the top of a file.</summary>
    internal static Finding At(string name, string sort, ImmutableArray<string> near, BindingPlace place, TextSpan span) =>
        new(Id, $"no {sort} is called `{name}`", place.At(span), "not declared in any file in sight")
        {
            Help = near.IsEmpty ? "declare it, or add the `use` line of the file that does" : DidYouMean.Help(near),
            Fixes = [.. DidYouMean.Fixes(near, place.At(span), name), .. DidYouMean.AreOtherSizes(near, name) ? Declarations(name, sort, place, span) : []],
        };

    /// <summary>A declaration of each sort that may be meant, right before the one that names it.</summary>
    private static ImmutableArray<Fix> Declarations(string name, string sort, BindingPlace place, TextSpan span)
    {
        if (place.File.Tree.Root.Declarations.FirstOrDefault(declaration => declaration.Span.Touches(span.Start)) is not { } around)
        {
            return [];
        }

        var before = place.At(new TextSpan(around.Span.Start, 0));
        var gap = around is CatalogSyntax ? "\n" : "\n\n";
        return
        [
            .. KindGuess.Likely(name, Declared.Where(word => sort.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Contains(word)))
                .Select(word => new Fix($"Declare the {word} `{name}`", FixGrade.NeedsLook, [new TextEdit(before, $"{word} {name} \"{name.Replace('_', ' ')}\"{gap}")])),
        ];
    }

    /// <summary>Of a declaration that is there, in a file that is not used here.</summary>
    internal static Finding NotUsed(string name, string sort, IReadOnlyList<Symbol> declarations, BindingPlace place, TextSpan span)
    {
        var paths = declarations.Select(one => LibraryPath.Relative(place.File.Path, one.File.Path)).Distinct(StringComparer.Ordinal);
        string[] lines = [.. paths.Select(path => $"use \"{path}\"")];
        var top = place.At(new TextSpan(place.File.Tree.Root.Children.FirstOrDefault()?.Span.Start ?? 0, 0));
        return new Finding(Id, $"no {sort} called `{name}` is in sight", place.At(span), "neither in this file nor in those that it uses")
        {
            Related = [.. declarations.Select(one => new LabeledSpan(one.Declared, "declared here, out of sight"))],
            Help = $"add {WordList.OrNames(lines)}",
            Fixes = [.. lines.Select(line => new Fix($"Add `{line}`", FixGrade.NeedsLook, [new TextEdit(top, line + "\n")]))],
        };
    }

    /// <summary>Of an item of a machine.</summary>
    internal static Finding Item(string name, string machine, ImmutableArray<string> near, ReferenceSyntax reference, BindingPlace place, bool isStep) =>
        new(Id, $"the machine `{machine}` has nothing called `{name}`", place.At(reference.Span), "not declared in the machine")
        {
            Help = near.IsEmpty && isStep ? "declare it in the machine; `procscript draft` does that from the steps" : DidYouMean.Help(near),
            Fixes = ValueFixes.HasVariable(reference, place) ? InLoop(name, near, reference, place) : DidYouMean.Fixes(near, place.At(reference.Span)),
        };

    /// <summary>The index is a variable, and has to stay one: only the name before it is written anew.</summary>
    private static ImmutableArray<Fix> InLoop(string name, ImmutableArray<string> near, ReferenceSyntax reference, BindingPlace place)
    {
        var index = name[CanonicalName.Base(name).Length..];
        return near.All(other => other.EndsWith(index, StringComparison.Ordinal))
            ? DidYouMean.Fixes([.. near.Select(CanonicalName.Base)], place.At(reference.Name.Span))
            : [];
    }

    /// <summary>Of an option.</summary>
    internal static Finding Option(string name, ImmutableArray<string> near, SourceSpan place) =>
        new(Id, $"no option or variable is called `{name}`", place, "neither an option of the machine nor a variable here")
        {
            Help = DidYouMean.Help(near),
            Fixes = DidYouMean.Fixes(near, place),
        };
}
