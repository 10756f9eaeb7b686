using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A property, or a declaration, in a block that does not take it.</summary>
public sealed class PropertyNotHere : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1111", "property-not-here", "A property in a block that does not take it", Severity.Error)
        {
            Fix = FixAvailability.Sometimes,
        };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The property exists, and belongs to another sort of block.",
        Why: "A torque on a tool or a mass on a joint would be read by nobody, while its author believes that it is on the card.",
        Wrong: """
            tool lever "trim lever" { torque 2 N.m }
            """,
        Right: """
            tool lever "trim lever"
            """);

    /// <summary>Of a property.</summary>
    internal static Finding At(string keyword, PropertyHolders holder, PropertyHolders holders, SourceSpan place, SourceSpan whole) =>
        new(Id, $"`{keyword}` does not belong in {WordList.And(PropertyTable.Words(holder))}", place, "not taken here")
        {
            Help = IsRefitCheck(keyword, holder) ? "what is checked on the way back stands in `refit`, and what is checked in between in `work`"
                : Instead(keyword, holder) is { } instead
                ? instead.Help
                : $"`{keyword}` stands in {WordList.Or(PropertyTable.Words(holders))}",
            Fixes = IsRefitCheck(keyword, holder)
                ? [new Fix("Wrap it in `refit`", FixGrade.NeedsLook, [Insert(whole, whole.Span.Start, "refit { "), Insert(whole, whole.Span.End, " }")])]
                : Instead(keyword, holder) is { } other
                ? [new Fix($"Write `{other.Keyword}`", FixGrade.NeedsLook, [new TextEdit(place, other.Keyword)])]
                : [new Fix($"Take `{keyword}` out", FixGrade.NeedsLook, [new TextEdit(whole, "")])],
        };

    private static bool IsRefitCheck(string keyword, PropertyHolders holder) => keyword == "check" && holder == PropertyHolders.Procedure;

    private static TextEdit Insert(SourceSpan whole, int position, string words) => new(whole with { Span = new TextSpan(position, 0) }, words);

    /// <summary>What people mean who reach for a word that means something else.</summary>
    private static (string Keyword, string Help)? Instead(string keyword, PropertyHolders holder) => keyword switch
    {
        "with" when holder is not (PropertyHolders.Fluid or PropertyHolders.Energy) => ("tool", "what it is done with is written `tool`"),
        "release" when holder == PropertyHolders.Energy => ("bleed", "how what is stored is let out is written `bleed`, and how long that takes `wait`"),
        _ => null,
    };

    /// <summary>Of an alert that holds one way only, where there is just one; without the word before it, it has its place.</summary>
    internal static Finding OneWay(string keyword, PropertyHolders holder, SourceSpan direction, SourceSpan rest)
    {
        var word = keyword.Split(' ')[0];
        return new Finding(Id, $"`{keyword}` does not belong in {WordList.And(PropertyTable.Words(holder))}", direction, "only what is undone has two ways")
        {
            Help = $"leave `{word}` out",
            Fixes =
            [
                new Fix($"Leave `{word}` out", FixGrade.NeedsLook, [new TextEdit(direction with { Span = TextSpan.FromBounds(direction.Span.Start, rest.Span.Start) }, "")]),
            ],
        };
    }

    /// <summary>Of an energy or a fluid of a kind, which belongs to no machine.</summary>
    internal static Finding EndOfKind(NamesPropertySyntax end, BindingPlace place) =>
        new(
            Id,
            $"a kind of joint belongs to no machine, so `{end.Keyword.Text}` can name none of its {(end.Keyword.Text == "on" ? "energies" : "fluids")}",
            place.At(end.Span),
            $"only `{end.Keyword.Text} none` is taken here")
        {
            Help = $"write it at the joints; `{end.Keyword.Text} none` at the kind says that they have none, unless a joint says otherwise",
            Fixes = [new Fix($"Take `{end.Keyword.Text}` out", FixGrade.NeedsLook, [new TextEdit(place.At(end.Span), "")])],
        };

    /// <summary>Of a <c>when</c> in a tool, a supply or a kind, which belongs to no machine.</summary>
    internal static Finding WhenInCatalog(WhenSyntax branch, BindingPlace place) =>
        new(
            Id,
            "the catalog belongs to no machine, so a `when` in it has no options or variables to ask for",
            place.At(new TextSpan(branch.Span.Start, "when".Length)),
            "not taken here")
        {
            Help = "write the `when` in the block of the joint, or declare two kinds and let the machine choose",
            Fixes = [new Fix("Take the `when` out", FixGrade.NeedsLook, [new TextEdit(place.At(branch.Span), "")])],
        };

    /// <summary>Of a declaration that stands right in a machine only.</summary>
    internal static Finding Declaration(string sort, string name, SourceSpan place) =>
        new(Id, $"the {sort} `{name}` stands inside something else", place, "not taken here")
        {
            Help = sort == "option"
                ? "declare it right in the machine, outside of `each` and `when`"
                : "declare it right in the machine, outside of parts",
        };

    /// <summary>Of the way aside of no part.</summary>
    internal static Finding Aside(SourceSpan place) =>
        new(Id, "`aside` does not belong in a machine", place, "no part here that could go aside")
        {
            Help = "write it inside the part that goes aside",
        };
}
