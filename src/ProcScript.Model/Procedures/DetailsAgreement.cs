using System.Globalization;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>
/// Joins what several blocks say of one action. Each thing counts where all that say it agree; of what keeps people safe all counts: the most people,
/// the hoist, the second person, every certificate, every alert and all protective equipment.
/// </summary>
internal static class DetailsAgreement
{
    /// <summary>What the blocks say together.</summary>
    public static ActionDetails Of(IReadOnlyCollection<ActionDetails> blocks)
    {
        var refits = blocks.Select(block => block.Refit).OfType<ActionDetails>().ToList();
        var torque = Agreed(blocks.Where(block => block.Torque is not null), block => block.Torque!.Print());
        return new ActionDetails
        {
            How = Agreed(blocks.Where(block => !block.How.IsEmpty), block => Lines(block.How))?.How ?? [],
            Tools = Agreed(blocks.Where(block => !block.Tools.IsEmpty), block => Lines(block.Tools.Select(tool => tool.Name)))?.Tools ?? [],
            People = blocks.Max(block => block.People),
            Time = Agreed(blocks.Where(block => block.Time is not null), block => block.Time!.Print())?.Time,
            Photos = Agreed(blocks.Where(block => !block.Photos.IsEmpty), block => Lines(block.Photos))?.Photos ?? [],
            Figures = Agreed(blocks.Where(block => !block.Figures.IsEmpty), block => Lines(block.Figures.Select(Words)))?.Figures ?? [],
            Checks = Agreed(blocks.Where(block => !block.Checks.IsEmpty), block => Lines(block.Checks))?.Checks ?? [],
            Store = Agreed(blocks.Where(block => block.Store is not null), block => block.Store!)?.Store,
            Torque = torque?.Torque,
            TorqueDeclared = torque?.TorqueDeclared,
            Pattern = Agreed(blocks.Where(block => block.Pattern is not null), block => Number((int)block.Pattern!))?.Pattern,
            Bag = Agreed(blocks.Where(block => block.Bag is not null), block => block.Bag!)?.Bag,
            Lift = Agreed(blocks.Where(block => block.Lift != LiftGeometry.None), block => block.Lift.ToString())?.Lift ?? LiftGeometry.None,
            Hoist = blocks.Any(block => block.Hoist),
            Signed = blocks.Any(block => block.Signed),
            Certificates = [.. blocks.SelectMany(block => block.Certificates).Distinct().OrderBy(one => one.Name, StringComparer.Ordinal)],
            In = Agreed(blocks.Where(block => block.In is not null), block => block.In!.Name)?.In,
            Ppe = [.. blocks.SelectMany(block => block.Ppe).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            Uses = Agreed(blocks.Where(block => !block.Uses.IsEmpty), block => Lines(block.Uses.Select(Words)))?.Uses ?? [],
            Alerts =
            [
                .. blocks.SelectMany(block => block.Alerts)
                    .OrderBy(alert => alert.Word)
                    .ThenBy(alert => alert.Text, StringComparer.Ordinal)
                    .ThenBy(alert => alert.Phase)
                    .ThenBy(alert => alert.Source.Path, StringComparer.Ordinal)
                    .ThenBy(alert => alert.Source.Span.Start)
                    .DistinctBy(alert => (alert.Word, alert.Text, alert.Phase)),
            ],
            Refit = refits.Count == 0 ? null : Of(refits),
        };
    }

    /// <summary>What is said in a block, and what is not in it is asked of another.</summary>
    public static ActionDetails With(ActionDetails own, ActionDetails other) => ReferenceEquals(other, ActionDetails.None) ? own : new ActionDetails
    {
        How = own.How.IsEmpty ? other.How : own.How,
        Tools = own.Tools.IsEmpty ? other.Tools : own.Tools,
        People = own.People == 0 ? other.People : own.People,
        Time = own.Time ?? other.Time,
        Photos = own.Photos.IsEmpty ? other.Photos : own.Photos,
        Figures = own.Figures.IsEmpty ? other.Figures : own.Figures,
        Checks = own.Checks.IsEmpty ? other.Checks : own.Checks,
        Store = own.Store ?? other.Store,
        Torque = own.Torque ?? other.Torque,
        TorqueDeclared = own.Torque is null ? other.TorqueDeclared : own.TorqueDeclared,
        Pattern = own.Pattern ?? other.Pattern,
        Bag = own.Bag ?? other.Bag,
        Lift = own.Lift == LiftGeometry.None ? other.Lift : own.Lift,
        Hoist = own.Hoist || other.Hoist,
        Signed = own.Signed || other.Signed,
        Certificates = [.. own.Certificates.Union(other.Certificates)],
        In = own.In ?? other.In,
        Ppe = [.. own.Ppe.Union(other.Ppe)],
        Uses = own.Uses.IsEmpty ? other.Uses : own.Uses,
        Alerts = other.Alerts,
        Refit = (own.Refit, other.Refit) switch
        {
            (null, var refit) => refit,
            (var refit, null) => refit,
            var (mine, given) => With(mine, given),
        },
    };

    /// <summary>All that a block says, so that two that say the same have the same key.</summary>
    public static string Key(ActionDetails block) => Lines(
    [
        Lines(block.How), Lines(block.Tools.Select(tool => tool.Name)), Number(block.People), block.Time?.Print() ?? "", Lines(block.Photos),
        Lines(block.Figures.Select(Words)), Lines(block.Checks), block.Store ?? "", block.Torque?.Print() ?? "", $"{block.Pattern}", block.Bag ?? "", block.Lift.ToString(),
        $"{block.Hoist} {block.Signed} {block.In?.Name}", Lines(block.Certificates.Select(one => one.Name)), Lines(block.Ppe), Lines(block.Uses.Select(Words)), Lines(block.Alerts.Select(alert => $"{alert.Word} {alert.Phase} {alert.Text}")),
        block.Refit is { } refit ? Key(refit) : "",
    ]);

    /// <summary>The block to take something from where all say the same, the first in the text; null where they do not.</summary>
    private static ActionDetails? Agreed(IEnumerable<ActionDetails> saying, Func<ActionDetails, string> words) =>
        saying.DistinctBy(words, StringComparer.Ordinal).ToList() is [_] ? saying.MinBy(block => block.TorqueDeclared, Places) : null;

    private static IComparer<SourceSpan?> Places { get; } = Comparer<SourceSpan?>.Create((one, other) =>
        (string.CompareOrdinal(one?.Path, other?.Path), (one?.Span.Start ?? 0).CompareTo(other?.Span.Start ?? 0)) switch
        {
            (0, var place) => place,
            var (path, _) => path,
        });

    private static string Words(Catalog.SupplyUse use) => $"{use.Amount?.Print()} {use.Supply.Name}";

    private static string Words(Figures.Figure figure) => $"{figure.Path}\n{figure.Caption}";

    private static string Lines(IEnumerable<string> lines) => string.Join('\u001F', lines);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
