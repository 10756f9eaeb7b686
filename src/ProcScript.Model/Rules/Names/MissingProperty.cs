using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>Something that cannot do without a property lacks it.</summary>
public sealed class MissingProperty : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1116", "missing-property", "A property that is missing", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy says how it is isolated and how it is restored, a fluid how it is emptied and how it is filled, a `set` to "
            + "which position, a `test` what is live and what is done meanwhile. Here that is missing.",
        Why: "The card would tell somebody to isolate a circuit and not how. That is where people get hurt.",
        Wrong: """
            machine cab "cab" {
              energy battery "12 V battery" { isolate "Take the negative cable off." }
            }
            """,
        Right: """
            machine cab "cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                restore "Refit the negative cable."
              }
            }
            """);

    /// <summary>Of an item of a machine.</summary>
    internal static Finding At(MachineItem item, string sort, IReadOnlyCollection<string> missing, SourceSpan place, Func<string, TextEdit?> adds) =>
        new(
            Id,
            $"the {item.Title} does not say how to {WordList.Or(missing)} it",
            place,
            $"{sort} without {WordList.And(missing.Select(word => $"`{word}`"))}")
        {
            Help = $"add {WordList.And(missing.Select(word => $"`{word} \"…\"`"))}",
            Fixes = adds(string.Join("  ", missing.Select(word => $"{word} \"{Sentence(word, item.Title)}\""))) is { } edit
                ? [new Fix($"Add {WordList.And(missing.Select(word => $"`{word}`"))}", FixGrade.NeedsLook, [edit])]
                : [],
        };

    // How it is really done nobody knows here; the maker does.
    private static string Sentence(string word, string title) => word switch
    {
        "isolate" => $"Isolate the {TextQuotes.Escaped(title)} as its maker says.",
        "restore" => $"Bring the {TextQuotes.Escaped(title)} back as its maker says.",
        "empty" => $"Drain the {TextQuotes.Escaped(title)} as the maker of the machine says.",
        _ => $"Fill the {TextQuotes.Escaped(title)} as the maker of the machine says.",
    };

    /// <summary>Of a position.</summary>
    internal static Finding Position(Control control, SourceSpan place) =>
        new(Id, $"the {control.Title} is set, and it is not said to what", place, "no position")
        {
            Related = [new LabeledSpan(control.Declared, $"its positions are {WordList.And(control.Positions)}")],
            Help = $"write `to` and one of {WordList.OrNames(control.Positions)}",
        };

    /// <summary>Of a test under power.</summary>
    internal static Finding Test(string title, bool isPowered, bool isDone, SourceSpan place) =>
        new(
            Id,
            $"the test \"{title}\" does not say {(isPowered ? "what is done" : isDone ? "what is live" : "what is live, and what is done")}",
            place,
            $"a test without {(isPowered ? "a check" : isDone ? "`power`" : "`power` and a check")}")
        {
            Help = isPowered
                ? "add what is done meanwhile: `check \"…\"`, `measure \"…\"` or `task \"…\"`"
                : "add `power` and the energies that are live meanwhile; what needs none is a `check` in the refit rules",
        };
}
