using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>What an outline shows of a node.</summary>
/// <param name="Name">Its name.</param>
/// <param name="NamePlace">Where that stands.</param>
/// <param name="Detail">What people call it.</param>
/// <param name="Kind">The protocol's kind of symbol.</param>
/// <param name="Inside">What lies in it.</param>
internal sealed record OutlineEntry(string Name, TextSpan NamePlace, string Detail, int Kind, IEnumerable<SyntaxNode> Inside)
{
    private const int Namespace = 3;
    private const int Class = 5;
    private const int Field = 8;
    private const int Enum = 10;
    private const int Function = 12;
    private const int Variable = 13;
    private const int Constant = 14;
    private const int Boolean = 17;
    private const int Object = 19;
    private const int Struct = 23;
    private const int Event = 24;

    /// <summary>The entry of a node; null where an outline does not show it.</summary>
    public static OutlineEntry? Of(SyntaxNode node) => node switch
    {
        MachineSyntax machine => Of(machine.Name, machine.Title, Class, machine.Members),
        ProcedureSyntax procedure => Of(procedure.Name, procedure.Title, Function, procedure.Items),
        CatalogSyntax { Keyword.Text: "tool" or "supply" or "certificate" } catalog => Of(catalog.Name, catalog.Title, Constant, []),
        CatalogSyntax catalog => Of(catalog.Name, catalog.Title, Struct, []),
        PartSyntax part => Of(part.Name.Name, part.Title, Object, part.Members),
        JointSyntax joint => Of(joint.Name.Name, null, Field, joint.Clauses) with { Detail = $"{joint.Count.Value} {joint.Kind.Text}" },
        CoverSyntax cover => Of(cover.Name.Name, null, Field, cover.Clauses) with { Detail = $"{cover.Count.Value} {cover.Kind.Text}" },
        EnergySyntax energy => Of(energy.Name.Name, energy.Title, Event, []),
        FluidSyntax fluid => Of(fluid.Name.Name, fluid.Title, Variable, []),
        ControlSyntax control => Of(control.Name.Name, control.Title, Enum, []),
        PlaceSyntax place => Of(place.Name.Name, place.Title, Namespace, []) with { Detail = $"room for {place.Room.Value}" },
        OptionSyntax option => Of(option.Name, option.Title, Boolean, []),
        StageSyntax stage => new OutlineEntry(stage.Title.Value, stage.Title.Span, "stage", Namespace, []),
        WorkSyntax work => new OutlineEntry("work", new TextSpan(work.Span.Start, "work".Length), "", Namespace, []),
        RefitSyntax refit => new OutlineEntry("refit", new TextSpan(refit.Span.Start, "refit".Length), "", Namespace, refit.Rules),
        TestRuleSyntax test => new OutlineEntry(test.Text.Value, test.Text.Span, "test", Namespace, []),
        _ => null,
    };

    private static OutlineEntry Of(WordSyntax name, TextSyntax? title, int kind, IEnumerable<SyntaxNode> inside) =>
        new(name.Text, name.Span, title?.Value ?? "", kind, inside);
}
