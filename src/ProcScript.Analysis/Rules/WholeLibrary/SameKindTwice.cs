using ProcScript.Analysis.Whole;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>Two kinds of the catalog have the same properties, or the same title.</summary>
public sealed class SameKindTwice : LibraryRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6002", "same-kind-twice", "Two kinds that are the same, or read the same", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two kinds of one sort have all properties alike, a thread among them, or titles that differ in nothing but "
            + "case, blanks and signs.",
        Why: "Two names for one piece are two lines on the order list and two bags, and a torque that is put right at one "
            + "stays wrong at the other. Two pieces that read the same get mixed up.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"
            clip pin_2 "Push-pin" { spare 10 % }

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins  held by 1 pin_2 as guard_stop }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_pins
                release guard_stop
                remove guard
              }
            }
            """,
        Right: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"
            clip pin_2 "push pin with stop" { spare 10 % }

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins  held by 1 pin_2 as guard_stop }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_pins
                release guard_stop
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view)
    {
        var kinds = view.Kinds.Where(kind => view.IsLive(kind.Declared.Path)).ToList();
        var alike = Groups(kinds, kind => kind.Thread is null ? null : KindLikeness.Properties(kind)).ToList();
        var told = alike.SelectMany(group => group.Skip(1)).ToHashSet();
        return alike.Select(group => At(group, "have the same properties", "two names for one piece"))
            .Concat(Groups(kinds, KindLikeness.Title).Where(group => !group.Skip(1).All(told.Contains)).Select(group => At(group, "read the same", "reads like the other")));
    }

    private static IEnumerable<List<Kind>> Groups(IEnumerable<Kind> kinds, Func<Kind, string?> key) => kinds
        .Select(kind => (Kind: kind, Key: key(kind)))
        .Where(one => one.Key is not null)
        .GroupBy(one => (one.Kind.Category, one.Key), one => one.Kind)
        .Where(group => group.Skip(1).Any())
        .Select(group => group.ToList());

    private static Finding At(List<Kind> group, string what, string label) =>
        new(Id, $"{ItemPhrases.List(group.Select(kind => $"`{kind.Name}`"))} {what}", group[1].Declared, label)
        {
            Related = [.. group.Where((_, i) => i != 1).Select(kind => new LabeledSpan(kind.Declared, $"`{kind.Name}` stands here"))],
            Help = "keep one of them, or say in the titles how to tell them apart",
        };
}
