using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>The names that fit within a sentence.</summary>
/// <param name="asked">The document.</param>
/// <param name="offset">Where one types.</param>
/// <param name="place">The sentence so far.</param>
internal sealed class NameChoices(Asked asked, int offset, TypingPlace place)
{
    private const int Reference = 18;
    private const int Keyword = 14;

    private readonly Machine? _machine = JobsInText.MachineAt(asked, offset);

    /// <summary>The items, in the order in which they are declared.</summary>
    public IEnumerable<CompletionItem> Items()
    {
        var last = place.Words[^1];
        return place.Words[0] switch
        {
            "goal" when place.Words.Length == 1 => Verbs(),
            "goal" when place.Words.Length == 2 => Items(Targets(last)),
            "do" when place.Words.Length == 1 => Procedures(),
            "procedure" when last == "on" => Machines(),
            "drive" or "tool" when place.Block is not "" || place.Words[0] == "drive" => Declared("tool"),
            "held" when IsKindNext => Kinds(KindCategory.Fastener, KindCategory.Clip, KindCategory.Bond),
            "covered" when IsKindNext => Kinds(KindCategory.Clip),
            "wired" when IsKindNext => Kinds(KindCategory.Connector),
            "piped" when IsKindNext => Kinds(KindCategory.Line),
            "carries" => Items(_machine?.Fluids),
            "behind" or "to" => Items(_machine?.Parts),
            "needs" => Items(_machine?.Items.Values.OrderBy(item => item.Declared.Span.Start)),
            "set" when last == "to" => Positions(),
            var word when last == "on" && word is "held" or "wired" or "piped" => Items(_machine?.Energies),
            var word when place.Block is "stage" or "work" or "refit" => Steps(word, last),
            _ => [],
        };
    }

    private bool IsKindNext => place.Words is [_, "by", _];

    private IEnumerable<CompletionItem> Steps(string verb, string last)
    {
        var isTarget = place.Words.Length == 1 || last == "of";
        if (ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is not { } row || !(isTarget || last is "before" or "after"))
        {
            return [];
        }

        if (place.Block == "refit")
        {
            return isTarget ? Items(Targets(verb)) : Verbs();
        }

        // Only what can be done here; where the state is not known, or nothing can, what the verb is for.
        var moment = JobsInText.TrialAt(asked, offset)?.Before(asked.Path, place.Start);
        var suited = Targets(verb).ToList();
        var possible = moment is null ? [] : suited.FindAll(item => moment.CanDo(row.Verb, item));
        return possible.Count > 0 ? Items(possible, moment) : Items(suited, moment);
    }

    private IEnumerable<MachineItem> Targets(string verb) => ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is { } row && _machine is { } machine
        ? machine.Items.Values.Where(item => (row.Targets & ActionTarget.Of(item)) != 0).OrderBy(item => item.Declared.Span.Start).ThenBy(item => item.Name, StringComparer.Ordinal)
        : [];

    private static IEnumerable<CompletionItem> Items(IEnumerable<MachineItem>? items, MachineMoment? moment = null) =>
        Ordered((items ?? []).Select(item => (item.Name, $"{item.Title}{(moment is null ? "" : $", {moment.Words(item)}")}")));

    private IEnumerable<CompletionItem> Positions() => place.Words is ["set", var name, ..] && _machine?.Items.GetValueOrDefault(name) is Control control
        ? Ordered(control.Positions.Select(position => (position, position == control.Positions[0] ? "home" : "")))
        : [];

    private IEnumerable<CompletionItem> Kinds(params ImmutableArray<KindCategory> categories) => Ordered(asked.Analysis.Library.Kinds
        .Where(kind => categories.Contains(kind.Category) && IsInSight(kind.Declared.Path))
        .Select(kind => (kind.Name, kind.Title)));

    private IEnumerable<CompletionItem> Procedures() => Ordered(asked.Analysis.Report.Procedures
        .Select(report => report.Procedure)
        .Where(procedure => procedure.Machine.Name == _machine?.Name && IsInSight(procedure.Declared.Path))
        .DistinctBy(procedure => procedure.Declared)
        .Select(procedure => (procedure.Name, procedure.Title)));

    private IEnumerable<CompletionItem> Machines() => Ordered(asked.Analysis.Library.Machines
        .Where(machine => IsInSight(machine.Declared.Path))
        .DistinctBy(machine => machine.Declared)
        .Select(machine => (machine.Name, machine.Title)));

    private IEnumerable<CompletionItem> Declared(string sort) => Ordered(
        from path in asked.Analysis.Names.Reach(asked.Path)
        from declaration in asked.Analysis.Library.Trees[path].Root.Declarations.OfType<CatalogSyntax>()
        where declaration.Keyword.Text == sort
        select (declaration.Name.Text, declaration.Title?.Value ?? ""));

    private IEnumerable<CompletionItem> Verbs() => ActionTable.Rows
        .Where(row => row.Targets != ActionTargets.None && row.Phase.HasFlag(place.Block == "refit" ? ActionPhase.Refit : ActionPhase.Strip)
            | (place.Block != "refit" && row.Phase.HasFlag(ActionPhase.Work)))
        .Select(row => new CompletionItem(row.Word, Keyword));

    private bool IsInSight(string path) => asked.Analysis.Names.Reach(asked.Path).Contains(path);

    private static IEnumerable<CompletionItem> Ordered(IEnumerable<(string Name, string Detail)> choices) => choices.Select((choice, index) =>
        new CompletionItem(choice.Name, Reference) { Detail = choice.Detail, SortText = index.ToString("D5", System.Globalization.CultureInfo.InvariantCulture) });
}
