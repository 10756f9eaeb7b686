using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Alerts as a plan has them.</summary>
internal static class AlertWords
{
    /// <summary>Alerts, the worst first where several stand together (common practice).</summary>
    public static ImmutableArray<PlanAlert> Of(IEnumerable<Alert> alerts) => [.. alerts.OrderBy(alert => alert.Word).Select(Of)];

    /// <summary>Authors' alerts and usual cautions, the worst first, of equals the author's.</summary>
    public static ImmutableArray<PlanAlert> Of(IEnumerable<Alert> alerts, IEnumerable<UsualCaution> usual, Wordbook book) =>
    [
        .. alerts.Select(alert => (alert.Word, Written: Of(alert)))
            .Concat(usual.Select(caution => (caution.Word, Written: new PlanAlert(Of(caution.Word), caution.Text(book)) { IsUsual = true })))
            .OrderBy(one => one.Word)
            .Select(one => one.Written),
    ];

    /// <summary>The same where no step says what the usual cautions are about: each begins with its item.</summary>
    public static ImmutableArray<PlanAlert> Of(IEnumerable<Alert> alerts, IEnumerable<(UsualCaution Caution, MachineItem Item)> usual, Wordbook book) =>
    [
        .. alerts.Select(alert => (alert.Word, Written: Of(alert)))
            .Concat(usual.Select(one => (one.Caution.Word, Written: new PlanAlert(Of(one.Caution.Word), book.Say("alert.about", ("item", ItemWords.Whole(one.Item)), ("text", one.Caution.Text(book)))) { IsUsual = true })))
            .OrderBy(one => one.Word)
            .Select(one => one.Written),
    ];

    private static PlanAlert Of(Alert alert) => new(Of(alert.Word), alert.Text);

    private static string Of(SignalWord word) => word switch
    {
        SignalWord.Danger => "danger",
        SignalWord.Warning => "warning",
        SignalWord.Caution => "caution",
        _ => "notice",
    };
}
